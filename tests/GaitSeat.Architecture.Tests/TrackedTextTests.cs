using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;

namespace GaitSeat.Architecture.Tests;

/// <summary>Nothing of one machine or one network stands in what others get.</summary>
public sealed partial class TrackedTextTests
{
    /// <summary>Put together here, so that this file does not find itself.</summary>
    private static readonly string[] MachineFolders = [.. new[] { "work", "root", "home", "Users", "tmp" }.Select(f => $"/{f}/")];

    private static readonly string[] LocalHosts = ["localhost", "127.0.0.1", "0.0.0.0"];

    [Fact]
    public void PathsOfAMachine_StandNowhere() => Assert.Empty(Lines().Where(l => MachinePath().IsMatch(l.Text)).Select(Where));

    [Fact]
    public void HostsOfAPrivateNetwork_StandNowhere() =>
        Assert.Empty(Lines().Where(l => Host().Matches(l.Text).Any(m => IsPrivate(m.Groups[1].Value))).Select(Where));

    [Fact]
    public void LockFiles_NameNoHost() =>
        Assert.Empty(Lines().Where(l => IsLock(l.File) && l.Text.Contains("\"resolved\": \"http", StringComparison.Ordinal)).Select(Where));

    [Theory]
    [InlineData("see /ho" + "me/anna/clips", true)]
    [InlineData("C:\\Us" + "ers\\anna", true)]
    [InlineData("/clips/x.mp4", false)]
    [InlineData("src/work/x", false)]
    [InlineData("a/root/b", false)]
    public void Pattern_FindsPathsOfAMachine(string text, bool found) => Assert.Equal(found, MachinePath().IsMatch(text));

    [Theory]
    [InlineData("10.1.2.3", true)]
    [InlineData("mirror", true)]
    [InlineData("packages.inter" + "nal", true)]
    [InlineData("localhost", false)]
    [InlineData("github.com", false)]
    public void Rule_TellsPrivateHosts(string host, bool isPrivate) => Assert.Equal(isPrivate, IsPrivate(host));

    private static bool IsPrivate(string host) =>
        !LocalHosts.Contains(host)
        && (IPAddress.TryParse(host, out _) || !host.Contains('.', StringComparison.Ordinal)
            || new[] { ".internal", ".local", ".lan", ".corp", ".intranet" }.Any(e => host.EndsWith(e, StringComparison.OrdinalIgnoreCase)));

    private static bool IsLock(string file) => file.EndsWith("lock.json", StringComparison.Ordinal);

    private static string Where((string File, int Line, string Text) l) => $"{l.File}:{l.Line}: {l.Text.Trim()}";

    private static IEnumerable<(string File, int Line, string Text)> Lines() =>
        from file in Tracked()
        let path = Path.Combine(House.Root, file)
        where File.Exists(path) && !IsBinary(path)
        from line in File.ReadLines(path).Select((text, i) => (file, i + 1, text))
        select line;

    /// <summary>As Git does: a zero byte early on means no text.</summary>
    private static bool IsBinary(string path)
    {
        using var stream = File.OpenRead(path);
        var head = new byte[8000];
        return head.AsSpan(0, stream.Read(head)).Contains((byte)0);
    }

    private static string[] Tracked()
    {
        try
        {
            using var git = Process.Start(new ProcessStartInfo("git", ["-C", House.Root, "ls-files", "-z"]) { RedirectStandardOutput = true })!;
            var list = git.StandardOutput.ReadToEnd();
            git.WaitForExit();
            if (git.ExitCode != 0) Assert.Skip("This is no Git checkout, so there is no list of tracked files.");
            return list.Split('\0', StringSplitOptions.RemoveEmptyEntries);
        }
        catch (Win32Exception)
        {
            Assert.Skip("Git is not installed, so there is no list of tracked files.");
            return [];
        }
    }

    private static Regex MachinePath() => Machine;

    private static readonly Regex Machine = new(
        $@"(?<![\w.@$}}/])({string.Join('|', MachineFolders)})\w|[A-Za-z]:\\{MachineFolders[3].Trim('/')}\\", RegexOptions.CultureInvariant);

    [GeneratedRegex(@"https?://([\w.\-]+)", RegexOptions.CultureInvariant)]
    private static partial Regex Host();
}
