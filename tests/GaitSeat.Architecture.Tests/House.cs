using System.Reflection;
using System.Xml.Linq;

namespace GaitSeat.Architecture.Tests;

/// <summary>A project of the house as its project file states it.</summary>
internal sealed record Project(string Name, string AssemblyName, IReadOnlyList<string> References, IReadOnlyList<string> Packages)
{
    internal Assembly Load() => Assembly.Load(AssemblyName);
}

/// <summary>The repository as it lies on disk.</summary>
internal static class House
{
    /// <summary>Downwards: a project may know only those above it.</summary>
    internal static IReadOnlyList<string> Order { get; } =
    [
        "GaitSeat.Model", "GaitSeat.Motion", "GaitSeat.Footage", "GaitSeat.Vision", "GaitSeat.Store", "GaitSeat.Faults",
        "GaitSeat.Study", "GaitSeat.Pipeline", "GaitSeat.Review", "GaitSeat.Studio", "GaitSeat.Cli",
    ];

    internal static string Root { get; } = FindRoot();

    internal static IReadOnlyList<Project> Projects { get; } =
        [.. Directory.EnumerateFiles(Path.Combine(Root, "src"), "*.csproj", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(Read)];

    /// <summary>Names of the projects, for data-driven tests.</summary>
    public static TheoryData<string> ProjectNames => [.. Projects.Select(p => p.Name)];

    internal static Project Get(string name) => Projects.Single(p => p.Name == name);

    /// <summary>C# files under a top-level folder, without what the build made.</summary>
    internal static IReadOnlyList<string> Sources(string folder) =>
        [.. Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories).Where(p => !IsBuilt(p))];

    internal static string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');

    private static bool IsBuilt(string path) => Relative(path).Split('/') is var parts && (parts.Contains("obj") || parts.Contains("bin"));

    private static Project Read(string path)
    {
        var xml = XDocument.Load(path);
        var name = Path.GetFileNameWithoutExtension(path);
        return new(
            name,
            xml.Descendants("AssemblyName").FirstOrDefault()?.Value ?? name,
            [.. Includes(xml, "ProjectReference").Select(r => r.Replace('\\', '/').Split('/')[^1]).Select(f => f[..^".csproj".Length])],
            [.. Includes(xml, "PackageReference")]);
    }

    private static IEnumerable<string> Includes(XDocument xml, string element) => xml.Descendants(element).Select(e => e.Attribute("Include")!.Value);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException($"No GaitSeat.sln above {AppContext.BaseDirectory}.");
    }
}
