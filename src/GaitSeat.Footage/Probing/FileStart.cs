using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>What can be told of a file before FFmpeg sees it: that it is a file, and that it is not one that only names other files.</summary>
internal static class FileStart
{
    /// <summary>Enough for the longest mark below after a byte order mark and blank lines.</summary>
    private const int Length = 1024;

    /// <summary>How playlists and references begin, whatever they are called: HLS, FFmpeg concat, PLS, SDP, ASX, DASH, SMIL, XSPF, ASF reference, links, RealMedia.</summary>
    private static readonly string[] ReferenceMarks =
    [
        "#extm3u", "ffconcat version", "[playlist]", "v=0", "<asx", "<mpd", "<smil", "<playlist", "[reference]", "[internetshortcut]",
        "rtsp://", "rtsptext", "http://", "https://", "file '",
    ];

    private static readonly string[] Mp4Boxes = ["ftyp", "moov", "mdat", "free", "skip", "wide", "pnot", "styp", "moof"];

    /// <exception cref="ClipSetAsideException">It is none, or empty, or cannot be opened, or points elsewhere.</exception>
    public static void Check(string path)
    {
        if (Directory.Exists(path))
            throw new ClipSetAsideException(ClipReasons.PathNotAFile, $"'{path}' is a folder; a clip is one file.");
        if (!File.Exists(path))
            throw new ClipSetAsideException(ClipReasons.PathNotAFile, $"'{path}' does not exist; a clip is a file on this machine.");
        var head = ReadHead(path);
        if (head.Length == 0)
            throw new ClipSetAsideException(ClipReasons.FileEmpty, $"'{path}' has no bytes; copy it again from the camera.");
        if (PointsElsewhere(head))
            throw new ClipSetAsideException(ClipReasons.PointsElsewhere, $"'{path}' is a playlist or link that names other files; give the video files themselves.");
    }

    /// <summary>Whether the first box is one an MP4 or QuickTime file may begin with. FFmpeg takes any file named <c>.mp4</c> for one.</summary>
    public static bool IsMp4(string path) => ReadHead(path) is { Length: >= 8 } head && Mp4Boxes.Contains(Encoding.ASCII.GetString(head, 4, 4));

    private static byte[] ReadHead(string path)
    {
        try
        {
            // A named pipe would keep us waiting for ever; only what has a length is read.
            if (new FileInfo(path).Length == 0) return [];
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            var head = new byte[Length];
            return head[..file.ReadAtLeast(head, Length, throwOnEndOfStream: false)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClipSetAsideException(ClipReasons.Unreadable, $"'{path}' cannot be opened: {e.Message} Allow reading it, or copy it again.", e);
        }
    }

    private static bool PointsElsewhere(byte[] head)
    {
        var text = Encoding.UTF8.GetString(head).TrimStart('\uFEFF').TrimStart();
        if (text.StartsWith("<?xml", StringComparison.OrdinalIgnoreCase) && text.IndexOf('>') is > 0 and var end) text = text[(end + 1)..].TrimStart();
        return ReferenceMarks.Any(mark => text.StartsWith(mark, StringComparison.OrdinalIgnoreCase));
    }
}
