using System.Buffers;
using System.Collections;
using System.Globalization;
using System.Linq.Expressions;
using System.Reflection;
using Warmup.Midi;
using Warmup.Takes;

namespace Warmup.Packages.Tests;

/// <summary>Values to call the libraries' public members with: for a type some that fit, the likeliest first, made anew each time.</summary>
internal static class Arguments
{
    private const int DeepestSearch = 3;

    private static readonly Type[] Exported = [.. PackedLibraries.Names.SelectMany(n => Assembly.Load(n).GetExportedTypes())];

    private static readonly Dictionary<Type, object?[]> Plain = new()
    {
        [typeof(string)] = ["C4", "ladder", "a", "60", "G3 C4"],
        [typeof(bool)] = [true, false],
        [typeof(char)] = ['C', 'S', 'R'],
        [typeof(byte)] = [(byte)1],
        [typeof(int)] = [1, 60, 0, 4, 15],
        [typeof(long)] = [1L, 60L, 0L],
        [typeof(ulong)] = [1UL, 60UL],
        [typeof(double)] = [440.0, 1.0, 60.0],
        [typeof(Rational)] = [new Rational(60), new Rational(1), new Rational(1, 2)],
        [typeof(Int128)] = [(Int128)1],
        [typeof(System.Numerics.BigInteger)] = [System.Numerics.BigInteger.One],
        [typeof(DateOnly)] = [new DateOnly(2026, 12, 1)],
        [typeof(TimeSpan)] = [TimeSpan.FromSeconds(1)],
        [typeof(CancellationToken)] = [CancellationToken.None],
        [typeof(IFormatProvider)] = [CultureInfo.InvariantCulture],
        [typeof(StringComparison)] = [StringComparison.Ordinal],
        [typeof(Exception)] = [new InvalidOperationException("inner")],
        [typeof(object)] = ["a"],
        [typeof(IScoreFormat)] = [new MidiFormat()],
    };

    /// <summary>The values for a parameter: its own default first.</summary>
    public static object?[] Of(ParameterInfo parameter) =>
        parameter.HasDefaultValue && parameter.DefaultValue is { } value && parameter.ParameterType is { IsEnum: false } ? [value, .. Of(parameter.ParameterType)] : Of(parameter.ParameterType);

    /// <summary>The values of a type; none where nobody says how one is made.</summary>
    public static object?[] Of(Type type, int depth = 0)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return Of(inner, depth);
        }

        if (Plain.TryGetValue(type, out var plain))
        {
            return plain;
        }

        if (type.IsEnum)
        {
            return [.. Enum.GetValues(type).Cast<object?>()];
        }

        if (type.IsAssignableFrom(typeof(MemoryStream)))
        {
            return [new MemoryStream()];
        }

        if (type.IsAssignableFrom(typeof(StringWriter)))
        {
            return [new StringWriter(CultureInfo.InvariantCulture)];
        }

        if (type.IsAssignableFrom(typeof(StringReader)))
        {
            return [new StringReader("a")];
        }

        if (type == typeof(SoundSource))
        {
            return [SoundSource.FromSamples(new float[16_000], 16_000)];
        }

        if (type == typeof(IBufferWriter<byte>))
        {
            return [new ArrayBufferWriter<byte>()];
        }

        if (typeof(Delegate).IsAssignableFrom(type))
        {
            return [Idle(type)];
        }

        if (Item(type) is { } item)
        {
            return Lists(type, item, depth);
        }

        var makers = LibrarySamples.ByType.GetValueOrDefault(type) ?? (type.IsAbstract || !Exported.Contains(type) ? null : PositionalSamples.Of(type, LibrarySamples.ByType));
        return makers is null ? Found(type, depth) : [.. makers.Select(m => m())];
    }

    /// <summary>A function that does nothing and gives its result's default.</summary>
    private static Delegate Idle(Type type)
    {
        var invoke = type.GetMethod("Invoke")!;
        var result = invoke.ReturnType == typeof(void) ? (Expression)Expression.Empty() : Expression.Default(invoke.ReturnType);
        return Expression.Lambda(type, result, invoke.GetParameters().Select(p => Expression.Parameter(p.ParameterType))).Compile();
    }

    /// <summary>What a sequence, a list or an array holds.</summary>
    private static Type? Item(Type type) =>
        type.IsArray ? type.GetElementType()
        : type.IsGenericType && type.GetGenericArguments() is [var item] && (type.GetGenericTypeDefinition() == typeof(ValueList<>) || type.IsAssignableFrom(item.MakeArrayType())) ? item
        : null;

    private static object?[] Lists(Type type, Type item, int depth)
    {
        var items = Of(item, depth);
        if (items.Length == 0)
        {
            return [];
        }

        var array = Array.CreateInstance(item, 1);
        array.SetValue(items[0], 0);
        return type.IsAssignableFrom(array.GetType())
            ? [array]
            : [typeof(ValueList).GetMethod(nameof(ValueList.ToValueList))!.MakeGenericMethod(item).Invoke(null, [array])];
    }

    /// <summary>What the libraries give by themselves: static properties, a constructor or a static method whose arguments are known.</summary>
    private static object?[] Found(Type type, int depth)
    {
        if (depth == DeepestSearch)
        {
            return [];
        }

        var properties = Exported.Where(t => !t.ContainsGenericParameters).SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Static))
            .Where(p => type.IsAssignableFrom(p.PropertyType) && p.GetIndexParameters().Length == 0)
            .Select(p => p.GetValue(null));
        var constructors = type.IsAbstract ? [] : type.GetConstructors().OrderBy(c => c.GetParameters().Length).Select(c => Made(c.GetParameters(), c.Invoke, depth));
        var methods = Exported.Where(t => !t.ContainsGenericParameters).SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static))
            .Where(m => type.IsAssignableFrom(m.ReturnType) && !m.IsSpecialName && !m.ContainsGenericParameters && m.GetParameters().Length > 0)
            .OrderBy(m => m.GetParameters().Length)
            .Select(m => Made(m.GetParameters(), a => m.Invoke(null, a), depth));
        return [.. properties.Concat(constructors).Concat(methods).Where(v => v is not null).Take(2)];
    }

    private static object? Made(ParameterInfo[] parameters, Func<object?[], object?> make, int depth)
    {
        if (parameters.Any(p => p.ParameterType.IsByRef || p.ParameterType.IsByRefLike))
        {
            return null;
        }

        var arguments = parameters.Select(p => Of(p.ParameterType, depth + 1)).ToList();
        for (var round = 0; round < 5 && arguments.All(a => a.Length > 0); round++)
        {
            try
            {
                return make([.. arguments.Select(a => a[round % a.Length])]);
            }
            catch (TargetInvocationException)
            {
                // These values did not fit; the next may.
            }
        }

        return null;
    }
}
