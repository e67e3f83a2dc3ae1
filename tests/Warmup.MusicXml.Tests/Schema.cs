using System.Xml;
using System.Xml.Schema;

namespace Warmup.MusicXml.Tests;

/// <summary>The W3C's MusicXML 4.0 schema, where the environment names the folder it lies in.</summary>
internal static class Schema
{
    public const string Variable = "MUSICXML_XSD_DIR";

    private static readonly Lazy<XmlSchemaSet?> Compiled = new(Load);

    public static void SkipWhereMissing() => Assert.SkipUnless(
        Compiled.Value is not null, $"the environment variable {Variable} does not name a folder with musicxml.xsd, xml.xsd and xlink.xsd of MusicXML 4.0");

    /// <summary>What the schema finds wrong; empty when the file is valid.</summary>
    public static List<string> Errors(byte[] bytes)
    {
        var errors = new List<string>();
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Ignore,
            XmlResolver = null,
            ValidationType = ValidationType.Schema,
            Schemas = Compiled.Value!,
            ValidationFlags = XmlSchemaValidationFlags.ReportValidationWarnings,
        };
        settings.ValidationEventHandler += (_, e) => errors.Add($"line {e.Exception.LineNumber}: {e.Message}");
        using var reader = XmlReader.Create(new MemoryStream(bytes), settings);
        while (reader.Read())
        {
        }

        return errors;
    }

    private static XmlSchemaSet? Load()
    {
        var folder = Environment.GetEnvironmentVariable(Variable);
        if (string.IsNullOrEmpty(folder))
        {
            return null;
        }

        // A folder that is named but wrong is an error of whoever set it, and no reason to skip.
        var set = new XmlSchemaSet { XmlResolver = new TwoImports(folder) };
        using (var reader = XmlReader.Create(Path.Combine(folder, "musicxml.xsd"), ReadScore.Settings))
        {
            set.Add(null, reader);
        }

        set.Compile();
        return set;
    }

    /// <summary>Resolves the two addresses that the schema imports to the files beside it, and nothing else.</summary>
    private sealed class TwoImports(string folder) : XmlResolver
    {
        public override object GetEntity(Uri absoluteUri, string? role, Type? ofObjectToReturn) => absoluteUri.AbsoluteUri switch
        {
            "http://www.musicxml.org/xsd/xml.xsd" => File.OpenRead(Path.Combine(folder, "xml.xsd")),
            "http://www.musicxml.org/xsd/xlink.xsd" => File.OpenRead(Path.Combine(folder, "xlink.xsd")),
            var other => throw new XmlException($"{other} is not resolved"),
        };
    }
}
