using System.Text;
using SharpFuzz;
using Warmup.Reading;

namespace Warmup.Fuzz;

/// <summary>
/// What a fuzzer calls: <c>Warmup.Fuzz READER</c> reads cases as the fuzzer hands them over, <c>Warmup.Fuzz</c> alone lists the readers,
/// and <c>Warmup.Fuzz READER FILE</c> reads one case, to see a crash again.
/// </summary>
internal static class Program
{
    public static int Main(string[] args)
    {
        if (args.Length == 0)
        {
            foreach (var name in Readers.All.Keys)
            {
                Console.WriteLine(name);
            }

            return 0;
        }

        var read = Readers.All[args[0]];
        if (args.Length > 1)
        {
            read(File.ReadAllBytes(args[1]));
            return 0;
        }

        Fuzzer.OutOfProcess.Run(stream =>
        {
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            read(bytes.ToArray());
        });
        return 0;
    }
}

/// <summary>All readers of text, each with what it promises: a value that reads back equal, or a refusal with a place, and nothing else.</summary>
internal static class Readers
{
    public static IReadOnlyDictionary<string, Action<byte[]>> All { get; } = new SortedDictionary<string, Action<byte[]>>(StringComparer.Ordinal)
    {
        ["scale"] = Text(text =>
        {
            if (Fair(Scale.TryParse(text, out var scale, out var error), error))
            {
                var again = Scale.Parse(scale!.ToText());
                Same((scale.Ascent, scale.Descent), (again.Ascent, again.Descent));
            }
        }),
        ["catalogue"] = Text(text =>
        {
            Fair(Catalogue.Default.TryRead(text, out _, out var error), error);
            Catalogue.Default.Search(text);
        }),
        ["pattern"] = Text(text =>
        {
            if (Fair(Pattern.TryParse(text, out var pattern, out var error), error))
            {
                Same(pattern, Pattern.Parse(pattern!.ToString()));
            }
        }),
        ["pattern-json"] = bytes => Refusable(() => Same(PatternFile.Read(bytes), Written(PatternFile.Read(bytes), PatternFile.Write, b => PatternFile.Read(b)))),
        ["singers-json"] = bytes => Refusable(() => Same(SingersFile.Read(bytes), Written(SingersFile.Read(bytes), SingersFile.Write, b => SingersFile.Read(b)))),
        ["meter"] = Text(text => Fair(Meter.TryParse(text, out _, out var error), error)),
        ["tempo"] = Text(text =>
        {
            if (Fair(TempoRamp.TryParse(text, out var ramp, out var error), error))
            {
                Same(ramp, TempoRamp.TryParse(ramp!.ToString(), out var again, out _) ? again : null);
            }
        }),
        ["tonic"] = Text(text => Fair(Tonic.TryParse(text, out _, out var error), error)),
        ["tuning"] = Text(text => Fair(Tuning.TryParse(text, out _, out var error), error)),
        ["scala"] = Text(text => Fair(ScalaFile.TryParse(text, out _, out var error), error)),
        ["syllables"] = Text(text => Fair(Syllables.TryParse(text, out _, out var error), error)),
        ["degrees"] = Text(text => Fair(Degree.TryParseList(text, out _, out var error), error)),
        ["note-name"] = Text(text =>
        {
            if (NoteName.TryParse(text, out var name, out _))
            {
                Same(name, NoteName.TryParse(name.ToString(), out var again, out _) ? again : default);
            }
        }),
        ["rational"] = Text(text =>
        {
            if (Rational.TryParse(text, out var number, out _))
            {
                Same(number, Rational.TryParse(number.ToString(), out var again, out _) ? again : default);
            }
        }),
        ["katapayadi"] = Text(text => Refusable(() => Katapayadi.NumberOf(text))),
        ["scale-list"] = Text(text => Fair(Catalogue.Default.TryReadList(text, out _, out var error), error)),
        ["plan-json"] = bytes => Refusable(() => Same(Plans.PlanFile.Read(bytes), Written(Plans.PlanFile.Read(bytes), Plans.PlanFile.Write, b => Plans.PlanFile.Read(b)))),
        ["log-entry"] = Text(text =>
        {
            if (Fair(Plans.LogEntry.TryParse(text, out var entry, out var error), error))
            {
                Same(entry, Plans.LogEntry.Parse(entry!.ToString()));
            }
        }),
        ["plan-log"] = bytes => Plans.PlanLog.Read(bytes),
        ["read-midi"] = bytes => Music([.. "MThd"u8, .. bytes]),
        ["read-mxl"] = Music,
        ["read-text"] = Music,
        ["read-xml"] = Music,
    };

    /// <summary>Reads a file of music: it is refused in words, or read the same the second time, and what is read can be made a score or is refused as any drill.</summary>
    private static void Music(byte[] bytes)
    {
        try
        {
            var music = MusicReader.Read(bytes);
            Same(music, MusicReader.Read(bytes));
            foreach (var section in music.Sections.Where(s => s.NoteCount <= 200))
            {
                section.ToDrill().TryToScore(out _, out _);
            }
        }
        catch (ReadingException refused) when (refused.Message.Length > 0)
        {
            // A refusal in words is one of the two promised answers.
        }
    }

    private static Action<byte[]> Text(Action<string> read) => bytes => read(Encoding.UTF8.GetString(bytes));

    private static T Written<T>(T value, Action<T, Stream> write, Func<byte[], T> read)
    {
        using var stream = new MemoryStream();
        write(value, stream);
        return read(stream.ToArray());
    }

    /// <summary>Whether a text was read; a refusal must have a place and a message.</summary>
    private static bool Fair(bool read, TextError? error)
    {
        if (read != error is null || error is { Line: < 1 } or { Column: < 1 } or { Message.Length: 0 })
        {
            throw new InvalidOperationException($"read: {read}, yet the error is {error}");
        }

        return read;
    }

    private static void Refusable(Action read)
    {
        try
        {
            read();
        }
        catch (WarmupFormatException)
        {
            // A refusal with its place is one of the two promised answers.
        }
    }

    private static void Same<T>(T one, T other)
    {
        if (!EqualityComparer<T>.Default.Equals(one, other))
        {
            throw new InvalidOperationException($"{one} is read back as {other}");
        }
    }
}
