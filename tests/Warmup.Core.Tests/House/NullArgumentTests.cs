using System.Reflection;

namespace Warmup.Tests;

/// <summary>
/// Source: the library's own promise that null is refused by name. Tries every public method and constructor of the values, pitches,
/// scales, times and tunings with null for each argument that must not be null, the others being good.
/// </summary>
public class NullArgumentTests
{
    private static readonly Type[] Types =
    [
        typeof(TextError), typeof(WarmupFormatException), typeof(ValueList), typeof(Rational), typeof(Degree), typeof(ScaleTone), typeof(NoteName), typeof(Interval), typeof(Tonic),
        typeof(Scale), typeof(Catalogue), typeof(ScaleKind), typeof(Katapayadi), typeof(Spelling), typeof(Speed), typeof(TempoRamp), typeof(Meter), typeof(Anga),
        typeof(Delivery), typeof(Tuning), typeof(ScalaFile), typeof(Syllables),
    ];

    public static TheoryData<string> Names => [.. Types.Select(t => t.FullName!)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Null_is_refused_by_name(string name)
    {
        var type = Types.Single(t => t.FullName == name);
        var tried = 0;
        foreach (var method in Methods(type))
        {
            var parameters = method.GetParameters();
            foreach (var parameter in parameters.Where(MustNotBeNull))
            {
                var arguments = parameters.Select(p => p == parameter ? null : Good(p.ParameterType)).ToArray();
                var thrown = Record.Exception(() => method is ConstructorInfo constructor ? constructor.Invoke(arguments) : method.Invoke(method.IsStatic ? null : Instance(type), arguments));
                var refused = Assert.IsType<ArgumentNullException>(thrown?.InnerException);
                Assert.Equal($"{method.Name}({parameter.Name})", $"{method.Name}({refused.ParamName})");
                tried++;
            }
        }

        Assert.True(tried > 0 || type == typeof(Anga) || type == typeof(Delivery), $"{name} was not tried");
    }

    private static IEnumerable<MethodBase> Methods(Type type)
    {
        const BindingFlags Public = BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;
        return type.GetConstructors(Public).Concat<MethodBase>(type.GetMethods(Public)
                .Where(m => m.Name is not ("Equals" or "op_Equality" or "op_Inequality") && !m.ReturnType.IsByRefLike)
                .Select(m => m.IsGenericMethodDefinition ? m.MakeGenericMethod([.. m.GetGenericArguments().Select(_ => typeof(int))]) : m))
            .Where(m => !m.GetParameters().Any(p => p.ParameterType.IsByRefLike));
    }

    private static bool MustNotBeNull(ParameterInfo parameter) =>
        !parameter.IsOut && !parameter.ParameterType.IsValueType && new NullabilityInfoContext().Create(parameter).WriteState == NullabilityState.NotNull;

    private static object Instance(Type type) => type == typeof(Catalogue) ? Catalogue.Default : Samples.ByType[type][0]();

    private static object? Good(Type type) =>
        type.IsByRef ? null
        : type == typeof(string) ? "S"
        : type == typeof(int) ? 1
        : type == typeof(Func<Degree, string?>) ? (Func<Degree, string?>)(degree => "la")
        : type == typeof(ValueList<string>) ? (ValueList<string>)["a", "b", "c", "d", "e", "f", "g"]
        : type == typeof(ValueList<ScaleTone>) ? Catalogue.Default.Parent(15).Scale.Ascent
        : Samples.ByType.TryGetValue(type, out var makers) ? makers[0]()
        : type.IsValueType ? Activator.CreateInstance(type)
        : throw new InvalidOperationException($"no sample of {type}: add one");
}
