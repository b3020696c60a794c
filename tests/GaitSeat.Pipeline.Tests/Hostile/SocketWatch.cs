using System.Diagnostics;
using System.Text.RegularExpressions;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>
/// Which kinds of sockets a program and everything it starts ask the kernel for, by strace(1): whoever wants to look a name up or call anybody needs one of the internet's first.
/// A request that is refused counts like one that is granted.
/// </summary>
internal sealed partial class SocketWatch(string log)
{
    /// <summary>Sockets within this machine: .NET's own door for debuggers is one.</summary>
    public const string Local = "AF_UNIX";

    private static readonly string[] _options = ["-f", "--seccomp-bpf", "-qq", "-e", "trace=socket", "-o"];

    /// <summary>Whether strace is installed and allowed to look.</summary>
    public static bool IsPossible { get; } = File.Exists("/usr/bin/strace") && Ends("strace", [.. _options, "/dev/null", "true"]) == 0;

    /// <summary>The program with strace before it; its exit code is the program's.</summary>
    public ProcessStartInfo Around(string program, params string[] words) => new("strace", [.. _options, log, program, .. words]);

    /// <summary>The kinds asked for, each once, as socket(2) names them.</summary>
    public IReadOnlyList<string> Kinds() => [.. File.ReadLines(log).Select(l => Asked().Match(l)).Where(m => m.Success).Select(m => m.Groups[1].Value).Distinct()];

    private static int Ends(string program, string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardError = true })!;
        process.WaitForExit();
        return process.ExitCode;
    }

    [GeneratedRegex(@"socket\(([A-Z]+_\w+)")]
    private static partial Regex Asked();
}
