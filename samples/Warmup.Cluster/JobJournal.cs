using Akka.Actor;
using Akka.Actor.Setup;
using Akka.Configuration;
using Akka.Persistence.Query;
using Akka.Persistence.Sql;
using Akka.Persistence.Sql.Query;
using Akka.Serialization;
using Akka.Streams;
using Akka.Streams.Dsl;
using LinqToDB;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Warmup.ManyMachines;

/// <summary>The database in which the coordinator keeps its records: a file of SQLite, or PostgreSQL where coordinators are on several machines.</summary>
internal sealed class JobJournal
{
    /// <summary>The name under which the records are kept. A journal holds one job.</summary>
    public const string Name = "coordinator";

    private const int LongestConnection = 2_000;

    private JobJournal(string provider, string connection) => Configuration = ConfigurationFactory.ParseString($$"""
        akka.persistence {
          journal {
            plugin = "akka.persistence.journal.sql"
            sql { provider-name = "{{provider}}", connection-string = "{{Escaped(connection)}}", auto-initialize = on }
          }
          snapshot-store {
            plugin = "akka.persistence.snapshot-store.sql"
            sql { provider-name = "{{provider}}", connection-string = "{{Escaped(connection)}}", auto-initialize = on }
          }
          query.journal.sql { provider-name = "{{provider}}", connection-string = "{{Escaped(connection)}}" }
        }
        """).WithFallback(SqlPersistence.DefaultConfiguration);

    /// <summary>What the engine is told about it.</summary>
    public Config Configuration { get; }

    /// <summary>A file of SQLite, which is made where it is missing; its folder must exist.</summary>
    public static JobJournal InFile(string path) =>
        new(ProviderName.SQLiteMS, new SqliteConnectionStringBuilder { DataSource = Path.GetFullPath(path) }.ConnectionString);

    /// <summary>PostgreSQL 15 or newer.</summary>
    /// <param name="file">A file that holds the connection string, so that its password stands on no command line.</param>
    /// <exception cref="UsageException">The file cannot be read, or holds no connection string.</exception>
    public static JobJournal InPostgres(string file)
    {
        try
        {
            return new FileInfo(file).Length > LongestConnection ? throw new UsageException($"--postgres must be a file of at most {LongestConnection} bytes")
                : new JobJournal(ProviderName.PostgreSQL15, new NpgsqlConnectionStringBuilder(File.ReadAllText(file).Trim()).ConnectionString);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new UsageException($"--postgres must be a file that holds a connection string such as Host=db;Database=warmup;Username=warmup;Password=...: {wrong.Message}");
        }
    }

    /// <summary>Reads all records from the first to the last.</summary>
    public async Task ReadAsync(Action<IRecord> read, CancellationToken stop)
    {
        var config = ConfigurationFactory.ParseString("""
            akka {
              loglevel = WARNING
              stdout-loglevel = WARNING
              loggers = ["Warmup.ManyMachines.ErrorLog, Warmup.Cluster"]
              actor.serializers.json = "Warmup.ManyMachines.NoOtherTypes, Warmup.Cluster"
            }
            """).WithFallback(Configuration);
        var serializers = SerializationSetup.Create(engine => [SerializerDetails.Create("warmup-records", new RecordSerializer(engine), [typeof(IRecord)])]);
        using var system = ActorSystem.Create(ClusterSettings.System, ActorSystemSetup.Create(BootstrapSetup.Create().WithConfig(config), serializers));
        try
        {
            using var materializer = system.Materializer();
            await PersistenceQuery.Get(system).ReadJournalFor<SqlReadJournal>(SqlReadJournal.Identifier)
                .CurrentEventsByPersistenceId(Name, 0, long.MaxValue)
                .RunForeach(envelope => read((IRecord)envelope.Event), materializer)
                .WaitAsync(stop);
        }
        finally
        {
            await system.Terminate();
        }
    }

    private static string Escaped(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);
}
