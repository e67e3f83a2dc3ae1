using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Warmup.Exporters.Tests;

/// <summary>A use of a member of the core, or of a function of the runtime's mathematics, in the source of an exporter.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Line">The line, from 1.</param>
/// <param name="Type">The type.</param>
/// <param name="Member">The member; <c>new</c> for a constructor, <c>with</c> for a changed copy, the type's own name where only the type is named.</param>
public sealed record CoreUse(string File, int Line, string Type, string Member)
{
    public override string ToString() => $"{File}:{Line} uses {Type}.{Member}";
}

/// <summary>Compiles the source of an exporter and tells what of the core it uses. A name in a comment is no use.</summary>
public static class ExporterReader
{
    private const string Usings = """
        global using System;
        global using System.Collections.Generic;
        global using System.IO;
        global using System.Linq;
        global using System.Threading;
        global using System.Threading.Tasks;
        """;

    private static readonly Dictionary<string, MetadataReference> References = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
        .Split(Path.PathSeparator)
        .DistinctBy(Path.GetFileNameWithoutExtension)
        .ToDictionary(p => Path.GetFileNameWithoutExtension(p), p => (MetadataReference)MetadataReference.CreateFromFile(p));

    /// <summary>The uses in a library's files.</summary>
    /// <param name="library">The name of the library; what is compiled in its place is not referred to.</param>
    /// <param name="files">The files: their names and texts.</param>
    public static List<CoreUse> Uses(string library, IEnumerable<(string Name, string Text)> files)
    {
        var options = new CSharpParseOptions(LanguageVersion.CSharp14, preprocessorSymbols: ["NET8_0_OR_GREATER", "NET9_0_OR_GREATER", "NET10_0_OR_GREATER"]);
        var trees = files.Select(f => CSharpSyntaxTree.ParseText(f.Text, options, f.Name)).ToList();
        var compilation = CSharpCompilation.Create(
            library,
            [.. trees, CSharpSyntaxTree.ParseText(Usings, options)],
            References.Where(r => r.Key != library).Select(r => r.Value),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true));

        // What the compiler does not understand would not be followed.
        Assert.Empty(compilation.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => d.ToString()));
        return [.. trees.SelectMany(t => Uses(t, compilation.GetSemanticModel(t))).Distinct()];
    }

    private static IEnumerable<CoreUse> Uses(SyntaxTree tree, SemanticModel model)
    {
        foreach (var node in tree.GetRoot().DescendantNodes())
        {
            var line = node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;
            if (node is WithExpressionSyntax copy && model.GetTypeInfo(copy).Type is { } copied && IsWatched(copied))
            {
                yield return new CoreUse(tree.FilePath, line, copied.Name, "with");
            }

            if (node is ExpressionSyntax expression && model.GetConversion(expression).MethodSymbol is { } conversion && IsWatched(conversion.ContainingType))
            {
                yield return new CoreUse(tree.FilePath, line, conversion.ContainingType.Name, conversion.Name);
            }

            if (node is not (SimpleNameSyntax or BaseObjectCreationExpressionSyntax or BinaryExpressionSyntax or ElementAccessExpressionSyntax))
            {
                continue;
            }

            foreach (var symbol in model.GetSymbolInfo(node) is var info && info.Symbol is { } found ? [found] : info.CandidateSymbols.ToArray())
            {
                var type = symbol as INamedTypeSymbol ?? symbol.ContainingType;
                if (type is not null && IsWatched(type))
                {
                    yield return new CoreUse(tree.FilePath, line, type.Name, symbol is IMethodSymbol { MethodKind: MethodKind.Constructor } ? "new" : symbol.Name);
                }
            }
        }
    }

    private static bool IsWatched(ITypeSymbol type) =>
        type.ContainingAssembly?.Name == "Warmup.Core" || (type.ContainingNamespace?.ToString() == "System" && type.Name is "Math" or "MathF");
}
