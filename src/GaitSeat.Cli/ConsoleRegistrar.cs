using Spectre.Console.Cli;

namespace GaitSeat.Cli;

/// <summary>Hands the consoles to the commands; nothing else is injected.</summary>
internal sealed class ConsoleRegistrar(AnsiConsoles consoles) : ITypeRegistrar, ITypeResolver
{
    private readonly Dictionary<Type, Func<object>> _made = new() { [typeof(AnsiConsoles)] = () => consoles };

    public ITypeResolver Build() => this;

    public void Register(Type service, Type implementation) => _made[service] = () => Make(implementation);

    public void RegisterInstance(Type service, object implementation) => _made[service] = () => implementation;

    public void RegisterLazy(Type service, Func<object> factory) => _made[service] = factory;

    public object? Resolve(Type? type)
    {
        if (type is null) return null;
        if (_made.TryGetValue(type, out var make)) return make();
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IEnumerable<>)) return AllOf(type.GetGenericArguments()[0]);
        return type is { IsAbstract: false, IsInterface: false } && !type.IsGenericTypeDefinition && type.Namespace?.StartsWith("GaitSeat", StringComparison.Ordinal) == true
            ? Make(type)
            : null;
    }

    private Array AllOf(Type type)
    {
        var one = _made.TryGetValue(type, out var make) ? make() : null;
        var all = Array.CreateInstance(type, one is null ? 0 : 1);
        if (one is not null) all.SetValue(one, 0);
        return all;
    }

    private object Make(Type type)
    {
        var constructor = type.GetConstructors().OrderByDescending(c => c.GetParameters().Length).First();
        return constructor.Invoke([.. constructor.GetParameters().Select(p => Resolve(p.ParameterType))]);
    }
}
