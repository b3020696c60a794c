using GaitSeat.Pipeline.Watch.Children;

namespace GaitSeat.Cli.Watching;

/// <summary>How this program is started once more, whether it runs through its own executable or through <c>dotnet</c>.</summary>
internal static class OwnProgram
{
    public static ChildCommand Command(IReadOnlyList<string> arguments)
    {
        var assembly = typeof(OwnProgram).Assembly.Location;
        var runs = Environment.ProcessPath;
        return runs is not null && Path.GetFileNameWithoutExtension(runs) == Path.GetFileNameWithoutExtension(assembly)
            ? new(runs, arguments)
            : new(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", [assembly, .. arguments]);
    }
}
