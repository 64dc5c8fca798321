using System.Collections;
using System.Reflection;
using System.Runtime.Loader;

namespace Schematic.Benchmarks.Mutants;

/// <summary>The tests of an assembly as calls, found by the names of their attributes: what runs them is not the framework that marks them.</summary>
/// <param name="Name">Class, method and the number of the row.</param>
/// <param name="Call">Runs it; throws where it fails.</param>
/// <param name="IsForEach">Whether it is run for each mutant, whatever it comes past.</param>
internal sealed record MutantCase(string Name, Action Call, bool IsForEach)
{
    /// <summary>
    /// The cases of the classes that a filter takes: beginnings of full names, those with a minus before them left out, those with a
    /// plus run for each mutant.
    /// </summary>
    public static List<MutantCase> Of(Assembly tests, string[] filter) =>
    [
        .. from type in tests.GetExportedTypes()
           where IsTaken(type.FullName!, filter) && type is { IsAbstract: false, IsClass: true }
           from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance)
           let fact = method.GetCustomAttributes().FirstOrDefault(IsFact)
           where fact is not null && IsTaken($"{type.FullName}.{method.Name}", filter) && fact.GetType().GetProperty("Skip")?.GetValue(fact) is null
           from one in Rows(type, method)
           select one with { IsForEach = filter.Any(f => f[0] == '+' && StartsWith(one.Name, f[1..])) },
    ];

    /// <summary>Loads an assembly and what lies beside it apart from this program's own copies.</summary>
    public static (Assembly Tests, Assembly Library) Load(string folder)
    {
        var path = Path.Combine(folder, "Schematic.Tests.dll");
        var resolver = new AssemblyDependencyResolver(path);
        var context = new AssemblyLoadContext("mutants");
        context.Resolving += (c, name) =>
        {
            var beside = Path.Combine(folder, name.Name + ".dll");
            return File.Exists(beside) ? c.LoadFromAssemblyPath(beside) : resolver.ResolveAssemblyToPath(name) is { } found ? c.LoadFromAssemblyPath(found) : null;
        };
        context.ResolvingUnmanagedDll += (_, name) => resolver.ResolveUnmanagedDllToPath(name) is { } found ? System.Runtime.InteropServices.NativeLibrary.Load(found) : 0;
        var library = context.LoadFromAssemblyPath(Path.Combine(folder, "Schematic.dll"));
        return (context.LoadFromAssemblyPath(path), library);
    }

    private static bool IsTaken(string name, string[] filter) =>
        filter.Any(f => f[0] != '-' && StartsWith(name, f.TrimStart('+'))) && !filter.Any(f => f[0] == '-' && name.Contains(f[1..], StringComparison.Ordinal));

    private static bool StartsWith(string name, string beginning) => name.StartsWith("Schematic.Tests." + beginning, StringComparison.Ordinal);

    private static bool IsFact(Attribute attribute)
    {
        for (var type = attribute.GetType(); type is not null; type = type.BaseType)
            if (type.FullName == "Xunit.FactAttribute") return true;
        return false;
    }

    private static IEnumerable<MutantCase> Rows(Type type, MethodInfo method)
    {
        var sources = method.GetCustomAttributes().Where(a => a.GetType().GetMethod("GetData", [typeof(MethodInfo)]) is not null).ToList();
        var name = $"{type.FullName}.{method.Name}";
        if (sources.Count == 0 && method.GetParameters().Length == 0) return [new MutantCase(name, () => Invoke(type, method, []), false)];
        var number = 0;
        return sources.SelectMany(s => ((IEnumerable)s.GetType().GetMethod("GetData", [typeof(MethodInfo)])!.Invoke(s, [method])!).Cast<object?[]>())
            .Select(row => new MutantCase($"{name} {++number}", () => Invoke(type, method, row), false));
    }

    private static void Invoke(Type type, MethodInfo method, object?[] row)
    {
        var parameters = method.GetParameters();
        var values = parameters.Select((p, i) => i < row.Length ? Fitting(row[i], p.ParameterType) : p.DefaultValue).ToArray();
        var test = Activator.CreateInstance(type);
        try
        {
            if (method.Invoke(test, values) is Task task) task.GetAwaiter().GetResult();
        }
        finally
        {
            (test as IDisposable)?.Dispose();
        }
    }

    /// <summary>As the framework does it: a whole number for a broken one.</summary>
    private static object? Fitting(object? value, Type type)
    {
        var wanted = Nullable.GetUnderlyingType(type) ?? type;
        if (value is null || wanted.IsInstanceOfType(value)) return value;
        return value is IConvertible && !wanted.IsEnum ? Convert.ChangeType(value, wanted, System.Globalization.CultureInfo.InvariantCulture) : value;
    }
}
