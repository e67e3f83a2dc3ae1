using System.Reflection;

namespace Warmup.TestSupport;

/// <summary>
/// Builds values of positional records, which have nothing but the parameters of their constructor: one value, and for each parameter
/// one that differs in it alone. Everything inside is built anew each time.
/// </summary>
public static class PositionalSamples
{
    public static Func<object>[]? Of(Type type, IReadOnlyDictionary<Type, Func<object>[]> samples)
    {
        var constructor = type.GetConstructors()
            .Where(c => c.GetParameters() is { Length: > 0 } parameters && parameters.All(p => type.GetProperty(p.Name!)?.PropertyType == p.ParameterType))
            .MaxBy(c => c.GetParameters().Length);
        if (constructor is null)
        {
            return null;
        }

        var parameters = constructor.GetParameters();
        return
        [
            () => Build(constructor, parameters, -1, samples),
            .. parameters.Select((_, changed) => (Func<object>)(() => Build(constructor, parameters, changed, samples))),
        ];
    }

    private static object Build(ConstructorInfo constructor, ParameterInfo[] parameters, int changed, IReadOnlyDictionary<Type, Func<object>[]> samples) =>
        constructor.Invoke([.. parameters.Select((p, i) => Value(p.ParameterType, i == changed ? 1 : 0, samples))]);

    private static object? Value(Type type, int variant, IReadOnlyDictionary<Type, Func<object>[]> samples)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return variant == 0 ? Value(inner, 0, samples) : null;
        }

        if (type.IsEnum)
        {
            return Enum.GetValues(type).GetValue(variant);
        }

        if (type == typeof(string))
        {
            return new string((char)('a' + variant), 2);
        }

        if (type == typeof(bool))
        {
            return variant == 1;
        }

        if (type == typeof(int) || type == typeof(double))
        {
            return Convert.ChangeType(variant + 1, type, System.Globalization.CultureInfo.InvariantCulture);
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ValueList<>))
        {
            var item = type.GetGenericArguments()[0];
            var items = Array.CreateInstance(item, 1);
            items.SetValue(Value(item, variant, samples), 0);
            return typeof(ValueList).GetMethod(nameof(ValueList.ToValueList))!.MakeGenericMethod(item).Invoke(null, [items]);
        }

        var makers = samples.GetValueOrDefault(type) ?? Of(type, samples)
            ?? throw new InvalidOperationException($"no sample of {type}: add one");
        return makers[variant]();
    }
}
