namespace GaitSeat.Review.Web;

/// <summary>Media types of clips by their ending. Browsers look inside and play what they know; QuickTime files of phones are near enough to MP4 for that.</summary>
internal static class ClipTypes
{
    private static readonly Dictionary<string, string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        [".mp4"] = "video/mp4", [".m4v"] = "video/mp4", [".mov"] = "video/mp4", [".webm"] = "video/webm", [".mkv"] = "video/x-matroska", [".ogv"] = "video/ogg",
    };

    internal static string Of(string path) => Known.GetValueOrDefault(Path.GetExtension(path), "application/octet-stream");
}
