using System.Reflection;
using System.Reflection.Emit;

namespace Warmup.Packages.Tests;

/// <summary>
/// Source: the libraries' own promise that null is refused by name. Every public constructor, method, operator and settable property of
/// every library is called with null for each reference that is not annotated as nullable, and must throw an exception that names it.
/// </summary>
public class NullTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private const int Rounds = 8;

    [Fact]
    public void Null_is_refused_by_name_everywhere()
    {
        var calls = PackedLibraries.Names.SelectMany(n => Assembly.Load(n).GetExportedTypes()).SelectMany(Calls).ToList();
        Assert.True(calls.Count > 250, $"only {calls.Count} references were found");
        var failures = calls.Select(c => c.Failure()).OfType<string>().Order(StringComparer.Ordinal).ToList();
        Assert.True(failures.Count == 0, $"{failures.Count} of {calls.Count} references are not refused by name:{Environment.NewLine}{string.Join(Environment.NewLine, failures)}");
    }

    /// <summary>That the test can fail: members that refuse null, let it pass, and fall over it.</summary>
    [Fact]
    public void A_reference_that_is_not_refused_is_named() => Assert.Equal(
        [
            "Careless.Later(text): returned",
            "Careless.Length(text): threw NullReferenceException",
            "Careless.Other(text): threw ArgumentNullException of 'other'",
            "Careless.Title(value): returned",
            "new Careless(text): returned",
        ],
        Calls(typeof(Careless)).Select(c => c.Failure()).OfType<string>().Select(f => f.Split(": ", 2)[1]).Order(StringComparer.Ordinal));

    // A converter is called by the serializer alone.
    private static IEnumerable<Call> Calls(Type type)
    {
        if (type.IsEnum || typeof(Delegate).IsAssignableFrom(type) || typeof(System.Text.Json.Serialization.JsonConverter).IsAssignableFrom(type) || type.Name.Contains('<', StringComparison.Ordinal))
        {
            return [];
        }

        var closed = type.IsGenericTypeDefinition ? type.MakeGenericType([.. type.GetGenericArguments().Select(a => a.GetGenericParameterConstraints().FirstOrDefault(c => c.IsClass) ?? typeof(int))]) : type;
        var members = closed.GetConstructors(Declared).Cast<MethodBase>().Where(_ => !closed.IsAbstract)
            .Concat(closed.GetMethods(Declared).Where(m => !m.IsAbstract));
        return members.SelectMany(m => m.GetParameters().Where(IsNeverNull).Select(p => new Call(m, p)));
    }

    private static bool IsNeverNull(ParameterInfo parameter)
    {
        if (parameter.ParameterType.IsValueType || parameter.ParameterType.IsByRef || parameter.ParameterType.IsGenericParameter)
        {
            return false;
        }

        // A property says of its setter's value what may be put in; the setter's own parameter says nothing of an attribute.
        var property = parameter.Member.Name.StartsWith("set_", StringComparison.Ordinal)
            ? parameter.Member.DeclaringType!.GetProperties(Declared).SingleOrDefault(p => p.SetMethod == parameter.Member && p.GetIndexParameters().Length == 0)
            : null;
        return (property is null ? new NullabilityInfoContext().Create(parameter) : new NullabilityInfoContext().Create(property)).WriteState == NullabilityState.NotNull;
    }

    /// <summary>A member and the parameter that gets null.</summary>
    private sealed record Call(MethodBase Member, ParameterInfo Parameter)
    {
        private bool IsSetter => Member.Name.StartsWith("set_", StringComparison.Ordinal);

        /// <summary>What goes wrong; null where null is refused by name.</summary>
        public string? Failure()
        {
            var called = Member.IsConstructor ? $"new {Member.DeclaringType!.Name}" : $"{Member.DeclaringType!.Name}.{(IsSetter ? Member.Name[4..] : Member.Name)}";
            var name = $"{Member.DeclaringType.Assembly.GetName().Name}: {called}({Parameter.Name})";
            var method = Member is MethodInfo { IsGenericMethodDefinition: true } open ? Closed(open) : Member;
            var parameters = method.GetParameters();
            var receivers = method.IsStatic || method.IsConstructor ? [null] : Arguments.Of(method.DeclaringType!);
            if (receivers.Length == 0)
            {
                return $"{name}: no sample of {method.DeclaringType}";
            }

            var arguments = parameters.Select(p => p.Position == Parameter.Position ? [null] : p.IsOut || p.ParameterType.IsByRefLike ? [null] : Arguments.Of(p)).ToList();
            if (parameters.FirstOrDefault(p => arguments[p.Position].Length == 0) is { } missing)
            {
                return $"{name}: no sample of {missing.ParameterType}";
            }

            // Other arguments that do not fit are refused too: the round counts in which null itself comes to its turn.
            var invoke = Invoker(method, parameters);
            var other = string.Empty;
            for (var round = 0; round < Rounds; round++)
            {
                switch (Thrown(() => invoke(receivers[round % receivers.Length], [.. arguments.Select(a => a[round % a.Length])])))
                {
                    case null:
                        return $"{name}: returned";
                    case ArgumentNullException refused when IsItsName(refused.ParamName):
                        return null;
                    case ArgumentNullException refused:
                        other = $"threw {nameof(ArgumentNullException)} of '{refused.ParamName}'";
                        break;
                    case NullReferenceException:
                        return $"{name}: threw {nameof(NullReferenceException)}";
                    case var exception:
                        other = $"threw {exception.GetType().Name}: {exception.Message}";
                        break;
                }
            }

            return $"{name}: {other}";
        }

        private bool IsItsName(string? name) => name == Parameter.Name || (IsSetter && name == Member.Name[4..]);

        private static Exception? Thrown(Func<object?> call)
        {
            try
            {
                switch (call())
                {
                    case Task task:
                        task.GetAwaiter().GetResult();
                        break;
                    case ValueTask task:
                        task.AsTask().GetAwaiter().GetResult();
                        break;
                }

                return null;
            }
            catch (Exception exception)
            {
                return exception;
            }
        }

        private static MethodInfo Closed(MethodInfo open)
        {
            foreach (var type in (Type[])[typeof(int), typeof(string), typeof(Scale)])
            {
                try
                {
                    return open.MakeGenericMethod([.. open.GetGenericArguments().Select(_ => type)]);
                }
                catch (ArgumentException)
                {
                    // Another type may keep the constraint.
                }
            }

            throw new InvalidOperationException($"no type fits {open}");
        }

        /// <summary>Calls the member as compiled code does, since reflection's own call takes no spans: they are empty here.</summary>
        private static Func<object?, object?[], object?> Invoker(MethodBase method, ParameterInfo[] parameters)
        {
            var dynamic = new DynamicMethod("call", typeof(object), [typeof(object), typeof(object[])], typeof(NullTests).Module, skipVisibility: true);
            var il = dynamic.GetILGenerator();
            var owner = method.DeclaringType!;
            if (!method.IsStatic && !method.IsConstructor)
            {
                il.Emit(OpCodes.Ldarg_0);
                il.Emit(owner.IsValueType ? OpCodes.Unbox : OpCodes.Castclass, owner);
            }

            foreach (var parameter in parameters)
            {
                var type = parameter.ParameterType;
                var value = type.IsByRef ? type.GetElementType()! : type;
                if (!type.IsByRef && !type.IsByRefLike)
                {
                    il.Emit(OpCodes.Ldarg_1);
                    il.Emit(OpCodes.Ldc_I4, parameter.Position);
                    il.Emit(OpCodes.Ldelem_Ref);
                    il.Emit(OpCodes.Unbox_Any, type);
                    continue;
                }

                var local = il.DeclareLocal(value);
                il.Emit(OpCodes.Ldloca, local);
                il.Emit(OpCodes.Initobj, value);
                il.Emit(type.IsByRef ? OpCodes.Ldloca : OpCodes.Ldloc, local);
            }

            var result = method is ConstructorInfo ? owner : ((MethodInfo)method).ReturnType;
            if (method is ConstructorInfo constructor)
            {
                il.Emit(OpCodes.Newobj, constructor);
            }
            else
            {
                il.Emit(owner.IsValueType || method.IsStatic ? OpCodes.Call : OpCodes.Callvirt, (MethodInfo)method);
            }

            if (result.IsByRefLike || result.IsByRef)
            {
                il.Emit(OpCodes.Pop);
                il.Emit(OpCodes.Ldnull);
            }
            else if (result == typeof(void))
            {
                il.Emit(OpCodes.Ldnull);
            }
            else if (result.IsValueType)
            {
                il.Emit(OpCodes.Box, result);
            }

            il.Emit(OpCodes.Ret);
            return dynamic.CreateDelegate<Func<object?, object?[], object?>>();
        }
    }

    /// <summary>Made up for the test that the test can fail.</summary>
    public sealed class Careless(string text)
    {
        public string? Text { get; } = text;

        public string Title { get; init; } = string.Empty;

        public static int Length(string text) => text.Length;

        public static int Careful(string text, string? other, ReadOnlySpan<int> numbers)
        {
            ArgumentNullException.ThrowIfNull(text);
            return text.Length + numbers.Length + (other?.Length ?? 0);
        }

        public static void Other(string text) => ArgumentNullException.ThrowIfNull(text, "other");

        public static IEnumerable<char> Later(string text)
        {
            ArgumentNullException.ThrowIfNull(text);
            foreach (var letter in text)
            {
                yield return letter;
            }
        }
    }
}
