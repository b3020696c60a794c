using System.Text.Json;
using System.Xml.Linq;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Models;

public sealed class NoticeTests
{
    private static readonly string[] Notice = File.ReadAllLines(Path.Combine(Weights.TopFolder, "NOTICE"));

    [Fact]
    public void Notice_EachNuGetPackage_HasALineWithALicence()
    {
        var packages = XDocument.Load(Path.Combine(Weights.TopFolder, "Directory.Packages.props"))
            .Descendants("PackageVersion").Select(p => p.Attribute("Include")!.Value).ToArray();

        Assert.NotEmpty(packages);
        Assert.All(packages, p => Assert.True(HasLicence(p), $"NOTICE has no line '{p}   <licence>': add one"));
    }

    [Fact]
    public void Notice_EachNpmPackage_HasALineWithItsVersion()
    {
        using var package = JsonDocument.Parse(File.ReadAllText(Path.Combine(Weights.TopFolder, "package.json")));

        foreach (var d in package.RootElement.GetProperty("dependencies").EnumerateObject())
        {
            Assert.Contains(Notice, line => line.Contains($"{d.Name} {d.Value.GetString()}", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Notice_EachModel_HasALineWithLicenceAndOrigin()
    {
        foreach (var m in ModelCatalogue.All)
        {
            var line = Assert.Single(Notice, l => l.TrimStart().StartsWith(m.Name + " ", StringComparison.Ordinal));
            Assert.Contains(m.Licence, line, StringComparison.Ordinal);
            Assert.Contains(m.Origin, line, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void LockFile_EachPackage_HasAnIntegrityHashAndNoAddress()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(Weights.TopFolder, "package-lock.json")));
        var packages = file.RootElement.GetProperty("packages").EnumerateObject().Where(p => p.Name.Length > 0).ToArray();

        Assert.NotEmpty(packages);
        Assert.All(packages, p => Assert.StartsWith("sha512-", p.Value.GetProperty("integrity").GetString(), StringComparison.Ordinal));
        Assert.All(packages, p => Assert.False(p.Value.TryGetProperty("resolved", out _), $"{p.Name} names where it came from"));
    }

    private static bool HasLicence(string package) =>
        Notice.Any(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var name, var licence, ..]
            && name == package && (licence is "MIT" or "Apache-2.0" or "BSD-3-Clause" or "MS-PL" or "LGPL-3.0-or-later"));
}
