namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the exit codes that the program states.</summary>
public class CommandTests
{
    [Theory]
    [InlineData(0, "count", "--size", "3")]
    [InlineData(0, "alone", "--size", "2", "--words", "ladder .ends", "--scales", "Mohanam")]
    [InlineData(0, "sample", "--size", "12", "--range", "1000000", "--samples", "3")]
    [InlineData(2, "sample", "--samples", "0")]
    [InlineData(2, "count", "--size", "13")]
    [InlineData(2, "alone", "--words", "ladder .nothing")]
    [InlineData(2, "alone", "--range", "0")]
    [InlineData(2, "local", "--workers", "0")]
    [InlineData(2, "coordinator", "--certificate", "no.pem")]
    [InlineData(2, "coordinator", "--certificate", "no.pem", "--journal", "j.db", "--postgres", "p.txt")]
    [InlineData(2, "coordinator", "--certificate", "no.pem", "--journal", "j.db", "--port", "65536")]
    [InlineData(2, "coordinator", "--certificate", "no.pem", "--journal", "j.db", "--host", "a b")]
    [InlineData(2, "coordinator", "--certificate", "no.pem", "--journal", "j.db", "--silence", "0")]
    [InlineData(2, "coordinator", "--certificate", "no.pem", "--journal", "j.db")]
    [InlineData(2, "coordinator", "--certificate", "no.pem", "--postgres", "none.txt")]
    [InlineData(2, "coordinator", "--journal", "j.db")]
    [InlineData(2, "worker", "--certificate", "no.pem", "--join", "somewhere")]
    [InlineData(2, "worker", "--certificate", "no.pem", "--join", "akka.ssl.tcp://warmup@127.0.0.1:4053")]
    [InlineData(2, "worker", "--join", "akka.ssl.tcp://warmup@127.0.0.1:4053")]
    [InlineData(2, "worker", "--certificate", "no.pem", "--join", "akka.ssl.tcp://warmup@127.0.0.1:4053", "--parts", "no-such-folder")]
    [InlineData(2, "certificates", "--out", "nowhere", "--nodes", "a b")]
    [InlineData(2, "sum")]
    [InlineData(2, "worker")]
    [InlineData(2, "nothing")]
    public void Exit_codes_tell_what_became_of_it(int expected, params string[] args) => Assert.Equal(expected, Program.Main(args));
}
