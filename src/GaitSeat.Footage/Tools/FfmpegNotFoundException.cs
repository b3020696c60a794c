namespace GaitSeat.Footage;

/// <summary>FFmpeg is missing or of no use on this machine. The message says what to install.</summary>
public sealed class FfmpegNotFoundException(string message, Exception? inner = null) : Exception(message, inner)
{
    internal static string Remedy()
    {
        var install = OperatingSystem.IsWindows() ? "winget install Gyan.FFmpeg"
            : OperatingSystem.IsMacOS() ? "brew install ffmpeg"
            : "sudo apt-get install ffmpeg (or your distribution's package of that name)";
        return $"Remedy: {install}; or set {FfmpegTools.FolderVariable} to the folder that holds ffmpeg and ffprobe.";
    }
}
