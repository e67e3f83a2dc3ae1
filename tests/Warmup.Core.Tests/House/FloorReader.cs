using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;

namespace Warmup.Tests;

/// <summary>A file of source. The first folder of its path says on which floor it lies.</summary>
public sealed record SourceFile(string Path, string Text)
{
    public string Folder => Path.Split('/')[0];
}

/// <summary>A use of something that is declared on a floor above, or beside the user on the same floor.</summary>
public sealed record FloorArrow(string From, string To, string Symbol)
{
    public override string ToString() => $"{From} uses {To}: {Symbol}";
}

/// <summary>
/// Compiles a tree of sources and finds, for each symbol that is used, where it is declared. A folder may use itself and the folders of
/// lower floors; what lies in no folder of a floor is refused. A name in a comment is no use.
/// </summary>
public sealed class FloorReader
{
    private static readonly SourceFile Usings = new("Usings.cs", """
        global using System;
        global using System.Collections.Generic;
        global using System.IO;
        global using System.Linq;
        global using System.Threading;
        global using System.Threading.Tasks;
        """);

    private static readonly SymbolDisplayFormat Shown =
        SymbolDisplayFormat.CSharpShortErrorMessageFormat.RemoveMiscellaneousOptions(SymbolDisplayMiscellaneousOptions.IncludeNullableReferenceTypeModifier);

    private readonly Dictionary<string, int> _floors;
    private readonly Dictionary<SyntaxTree, SourceFile> _files;
    private readonly string[] _contexts;

    /// <param name="name">The assembly's name.</param>
    /// <param name="floors">From the lowest floor to the highest: the folders that lie on it.</param>
    /// <param name="files">All sources.</param>
    /// <param name="lower">What the sources are compiled against besides the runtime.</param>
    public FloorReader(string name, string[][] floors, IEnumerable<SourceFile> files, params FloorReader[] lower)
    {
        _floors = floors.SelectMany((folders, floor) => folders.Select(f => (f, floor))).ToDictionary(f => f.f, f => f.floor);
        var options = CSharpParseOptions.Default
            .WithLanguageVersion(LanguageVersion.CSharp14)
            .WithPreprocessorSymbols(Enumerable.Range(8, Environment.Version.Major - 7).Select(v => $"NET{v}_0_OR_GREATER"));
        _files = files.ToDictionary(f => CSharpSyntaxTree.ParseText(f.Text, options, f.Path));
        _contexts = ["JsonSerializerContext", .. _files.Keys.SelectMany(Contexts)];
        Compilation = CSharpCompilation.Create(
            name,
            [.. _files.Keys, CSharpSyntaxTree.ParseText(Usings.Text, options, Usings.Path)],
            [.. Runtime(), .. lower.Select(l => l.Compilation.ToMetadataReference())],
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));
    }

    public CSharpCompilation Compilation { get; }

    /// <summary>
    /// What the compiler does not understand. A source generator writes the rest of a JSON context, and does not run here: what such a class
    /// lacks is no error, and nothing of a floor is in it.
    /// </summary>
    public IReadOnlyList<string> Errors =>
        [.. Compilation.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error && !IsGenerated(d)).Select(d => d.ToString())];

    /// <summary>Folders that lie on no floor.</summary>
    public IReadOnlyList<string> Homeless => [.. _files.Values.Select(f => f.Folder).Where(f => !_floors.ContainsKey(f)).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>How many uses were followed to a declaration in these sources: none would mean that nothing was read.</summary>
    public int Followed { get; private set; }

    /// <summary>All arrows that point upward or sideways, each once.</summary>
    public IReadOnlyList<FloorArrow> Arrows()
    {
        Followed = 0;
        var arrows = new HashSet<FloorArrow>();
        foreach (var (tree, file) in _files)
        {
            var model = Compilation.GetSemanticModel(tree);
            foreach (var symbol in tree.GetRoot().DescendantNodes().SelectMany(n => Uses(model, n)).SelectMany(Parts))
            {
                foreach (var home in Homes(symbol))
                {
                    Followed++;
                    if (home.Folder != file.Folder && _floors[home.Folder] >= _floors[file.Folder])
                    {
                        arrows.Add(new FloorArrow(file.Path, home.Path, symbol.ToDisplayString(Shown)));
                    }
                }
            }
        }

        return [.. arrows.OrderBy(a => a.ToString(), StringComparer.Ordinal)];
    }

    /// <summary>What a piece of source names, and what it uses without naming it: operators, conversions, the constructor of <c>new(...)</c>, a loop's parts.</summary>
    private static IEnumerable<ISymbol> Uses(SemanticModel model, SyntaxNode node)
    {
        if (node is ExpressionSyntax or ConstructorInitializerSyntax or AttributeSyntax or PrimaryConstructorBaseTypeSyntax or OrderingSyntax or QueryClauseSyntax or SelectOrGroupClauseSyntax)
        {
            var info = model.GetSymbolInfo(node);
            foreach (var symbol in info.Symbol is { } one ? [one] : info.CandidateSymbols)
            {
                yield return symbol;
            }
        }

        if (node is ExpressionSyntax expression && model.GetConversion(expression).MethodSymbol is { } conversion)
        {
            yield return conversion;
        }

        if (node is CommonForEachStatementSyntax loop)
        {
            var info = model.GetForEachStatementInfo(loop);
            foreach (var symbol in (ISymbol?[])[info.GetEnumeratorMethod, info.MoveNextMethod, info.CurrentProperty, info.DisposeMethod, info.ElementConversion.MethodSymbol])
            {
                if (symbol is not null)
                {
                    yield return symbol;
                }
            }
        }

        // A part of a pattern that deconstructs, and the method of a deconstruction into variables.
        if (node is AssignmentExpressionSyntax assignment && model.GetDeconstructionInfo(assignment).Method is { } method)
        {
            yield return method;
        }

        if (node is RecursivePatternSyntax && model.GetOperation(node) is IRecursivePatternOperation { DeconstructSymbol: { } deconstruct })
        {
            yield return deconstruct;
        }

        // What an unnamed type makes known: the type of a variable that is declared with var, of a parameter of a lambda.
        if (node is IdentifierNameSyntax { IsVar: true } or ImplicitObjectCreationExpressionSyntax && model.GetTypeInfo(node).Type is { } type)
        {
            yield return type;
        }
    }

    private bool IsGenerated(Diagnostic error) =>
        error.Id is "CS0117" or "CS0534" or "CS7036" or "CS8795" && _contexts.Any(c => error.GetMessage(CultureInfo.InvariantCulture).Contains(c, StringComparison.Ordinal));

    private static IEnumerable<string> Contexts(SyntaxTree tree) => tree.GetRoot().DescendantNodes().OfType<ClassDeclarationSyntax>()
        .Where(c => c.BaseList?.Types.Any(b => b.Type.ToString() == "JsonSerializerContext") == true)
        .Select(c => c.Identifier.Text);

    private IEnumerable<SourceFile> Homes(ISymbol symbol) => symbol.DeclaringSyntaxReferences
        .Select(r => _files.GetValueOrDefault(r.SyntaxTree))
        .OfType<SourceFile>()
        .Distinct();

    /// <summary>The symbol as it is declared: an extension method not reduced, a generic type open and with its arguments.</summary>
    private static IEnumerable<ISymbol> Parts(ISymbol symbol) => symbol switch
    {
        INamespaceSymbol => [],
        IArrayTypeSymbol array => Parts(array.ElementType),
        IMethodSymbol method => [(method.ReducedFrom ?? method).OriginalDefinition, .. method.TypeArguments.SelectMany(Parts)],
        INamedTypeSymbol type => [type.OriginalDefinition, .. type.TypeArguments.SelectMany(Parts)],
        _ => [symbol.OriginalDefinition],
    };

    private static IEnumerable<MetadataReference> Runtime() =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(p => Path.GetFileName(p) is var name && (name.StartsWith("System.", StringComparison.Ordinal) || name is "mscorlib.dll" or "netstandard.dll"))
            .Select(p => MetadataReference.CreateFromFile(p));
}
