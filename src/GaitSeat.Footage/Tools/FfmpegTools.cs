using System.Diagnostics;

namespace GaitSeat.Footage;

/// <summary>Where ffmpeg and ffprobe are, and which version they are.</summary>
/// <param name="FfmpegPath">Full path of ffmpeg.</param>
/// <param name="FfprobePath">Full path of ffprobe.</param>
/// <param name="Version">Version as ffmpeg writes it, such as <c>5.1.9-0+deb12u1</c>.</param>
public sealed record FfmpegTools(string FfmpegPath, string FfprobePath, string Version)
{
    /// <summary>Names a folder to look in before the PATH.</summary>
    public const string FolderVariable = "GAITSEAT_FFMPEG";

    /// <summary>The oldest release that takes the options used here (<c>-fps_mode</c> came with 5.1).</summary>
    public static readonly Version OldestVersion = new(5, 1);

    /// <summary>Finds both programs: in <paramref name="folder"/> if given, else in <see cref="FolderVariable"/> if set, else on the PATH.</summary>
    /// <exception cref="FfmpegNotFoundException">One of them is missing, does not start, or is too old. The message names the remedy.</exception>
    public static FfmpegTools Locate(string? folder = null)
    {
        var named = folder ?? Environment.GetEnvironmentVariable(FolderVariable);
        var folders = string.IsNullOrWhiteSpace(named) ? PathFolders() : [named];
        var ffmpeg = Find("ffmpeg", folders, named);
        var ffprobe = Find("ffprobe", folders, named);
        var version = AskVersion(ffmpeg);
        RefuseTooOld(ffmpeg, version);
        return new(ffmpeg, ffprobe, version);
    }

    private static string[] PathFolders() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);

    private static string Find(string name, string[] folders, string? named)
    {
        var file = OperatingSystem.IsWindows() ? name + ".exe" : name;
        foreach (var folder in folders)
        {
            var candidate = Path.Combine(folder, file);
            if (File.Exists(candidate)) return Path.GetFullPath(candidate);
        }

        var where = string.IsNullOrWhiteSpace(named) ? "on the PATH" : $"in '{named}'";
        throw new FfmpegNotFoundException($"{file} was not found {where}. {FfmpegNotFoundException.Remedy()}");
    }

    private static string AskVersion(string ffmpeg)
    {
        var start = new ProcessStartInfo(ffmpeg) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.ArgumentList.Add("-version");
        try
        {
            using var process = Process.Start(start)!;
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            var words = (process.StandardOutput.ReadLine() ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (words is ["ffmpeg", "version", var version, ..]) return version;
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            throw new FfmpegNotFoundException($"'{ffmpeg}' does not start: {e.Message}. {FfmpegNotFoundException.Remedy()}", e);
        }

        throw new FfmpegNotFoundException($"'{ffmpeg}' does not say a version, so it is not FFmpeg. {FfmpegNotFoundException.Remedy()}");
    }

    /// <summary>Development builds carry a name and no number (<c>N-1234-gabc</c>); they are taken as new enough.</summary>
    private static void RefuseTooOld(string ffmpeg, string version)
    {
        var number = string.Concat(version.TrimStart('n').TakeWhile(c => char.IsAsciiDigit(c) || c == '.')).Trim('.');
        if (!number.Contains('.')) number += ".0";
        if (System.Version.TryParse(number, out var parsed) && parsed < OldestVersion)
            throw new FfmpegNotFoundException($"'{ffmpeg}' is version {version}; {OldestVersion} or newer is needed. {FfmpegNotFoundException.Remedy()}");
    }
}
