using System.Xml.Linq;

namespace GaitSeat.Architecture.Tests;

/// <summary>Each outside library is known to the project that owns its kind of work, and to no other.</summary>
public sealed class PackageTests
{
    /// <summary>Package, the assembly it brings, and who may use it. A package that is not here may be used by none under src.</summary>
    private static readonly (string Package, string? Assembly, string[] Owners)[] Owned =
    [
        ("MathNet.Numerics", "MathNet.Numerics", ["GaitSeat.Motion", "GaitSeat.Faults", "GaitSeat.Study", "GaitSeat.Studio"]),
        ("FFMpegCore", "FFMpegCore", ["GaitSeat.Footage"]),
        ("SkiaSharp", "SkiaSharp", ["GaitSeat.Footage", "GaitSeat.Study"]),
        ("SkiaSharp.NativeAssets.Linux.NoDependencies", null, ["GaitSeat.Footage", "GaitSeat.Study"]),
        ("ScottPlot", "ScottPlot", ["GaitSeat.Study"]),
        ("Microsoft.ML.OnnxRuntime", "Microsoft.ML.OnnxRuntime", ["GaitSeat.Vision"]),
        ("Microsoft.ML.OnnxRuntime.Managed", "Microsoft.ML.OnnxRuntime", ["GaitSeat.Vision"]),
        ("Microsoft.ML.OnnxRuntime.Gpu.Linux", null, ["GaitSeat.Vision"]),
        ("Microsoft.ML", "Microsoft.ML.Core", ["GaitSeat.Faults"]),
        ("Microsoft.ML.FastTree", "Microsoft.ML.FastTree", ["GaitSeat.Faults"]),
        ("Microsoft.ML.LightGbm", "Microsoft.ML.LightGbm", ["GaitSeat.Faults"]),
        ("Parquet.Net", "Parquet", ["GaitSeat.Store"]),
        ("DuckDB.NET.Data.Full", "DuckDB.NET.Data", ["GaitSeat.Store"]),
        ("CsvHelper", "CsvHelper", ["GaitSeat.Store"]),
        ("Polly.Core", "Polly.Core", ["GaitSeat.Pipeline"]),
        ("Hangfire.Core", "Hangfire.Core", ["GaitSeat.Pipeline", "GaitSeat.Cli"]),
        ("Hangfire.InMemory", "Hangfire.InMemory", ["GaitSeat.Pipeline"]),
        ("Hangfire.PostgreSql", "Hangfire.PostgreSql", ["GaitSeat.Pipeline"]),
        ("Hangfire.AspNetCore", "Hangfire.AspNetCore", ["GaitSeat.Cli"]),
        ("Microsoft.Extensions.Hosting.WindowsServices", "Microsoft.Extensions.Hosting.WindowsServices", ["GaitSeat.Cli"]),
        ("Microsoft.Extensions.Logging.Abstractions", null, ["GaitSeat.Pipeline", "GaitSeat.Cli"]),
        ("OpenTelemetry", "OpenTelemetry", ["GaitSeat.Cli"]),
        ("OpenTelemetry.Exporter.OpenTelemetryProtocol", "OpenTelemetry.Exporter.OpenTelemetryProtocol", ["GaitSeat.Cli"]),
        ("Serilog", "Serilog", ["GaitSeat.Cli"]),
        ("Serilog.Extensions.Logging", "Serilog.Extensions.Logging", ["GaitSeat.Cli"]),
        ("Serilog.Formatting.Compact", "Serilog.Formatting.Compact", ["GaitSeat.Cli"]),
        ("Serilog.Sinks.File", "Serilog.Sinks.File", ["GaitSeat.Cli"]),
        ("YamlDotNet", "YamlDotNet", ["GaitSeat.Pipeline"]),
        ("JsonSchema.Net", "JsonSchema.Net", ["GaitSeat.Pipeline", "GaitSeat.Vision"]),
        ("Spectre.Console", "Spectre.Console", ["GaitSeat.Cli"]),
        ("Spectre.Console.Cli", "Spectre.Console.Cli", ["GaitSeat.Cli"]),
    ];

    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void ProjectFile_AsksOnlyForPackagesItOwns(string name) =>
        Assert.Empty(House.Get(name).Packages.Except(Owned.Where(o => o.Owners.Contains(name)).Select(o => o.Package)));

    /// <summary>A package comes through references too; the compiled assembly tells whether it is used.</summary>
    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void Assembly_UsesOnlyLibrariesItOwns(string name)
    {
        var used = House.Get(name).Load().GetReferencedAssemblies().Select(a => a.Name!).ToHashSet();
        Assert.Empty(Owned.Where(o => o.Assembly is not null && used.Contains(o.Assembly) && !o.Owners.Contains(name)).Select(o => o.Package));
    }

    [Fact]
    public void AssemblyNames_AreTheTrueOnes() => Assert.All(
        House.Projects.SelectMany(p => p.Packages.Distinct()).SelectMany(p => Owned.Where(o => o.Package == p && o.Assembly is not null)),
        o => Assert.True(File.Exists(Path.Combine(AppContext.BaseDirectory, o.Assembly + ".dll")), $"{o.Package} brings no {o.Assembly}.dll"));

    [Fact]
    public void Versions_StandInTheCentralListOnly()
    {
        var files = Directory.EnumerateFiles(House.Root, "*.csproj", SearchOption.AllDirectories).Where(f => !House.Relative(f).Contains("node_modules", StringComparison.Ordinal));
        Assert.Empty(files.Where(f => XDocument.Load(f).Descendants("PackageReference").Any(p => p.Attribute("Version") is not null)).Select(House.Relative));
    }

    [Fact]
    public void Notice_NamesEveryPackageOfTheCentralList()
    {
        var notice = Path.Combine(House.Root, "NOTICE");
        if (!File.Exists(notice)) Assert.Skip("There is no NOTICE yet.");
        var named = File.ReadLines(notice).Select(l => l.Trim().Split(' ')[0].TrimEnd(',')).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var central = XDocument.Load(Path.Combine(House.Root, "Directory.Packages.props")).Descendants("PackageVersion").Select(p => p.Attribute("Include")!.Value);
        Assert.Empty(central.Except(named, StringComparer.OrdinalIgnoreCase));
    }
}
