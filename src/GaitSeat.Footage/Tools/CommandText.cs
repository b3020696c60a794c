namespace GaitSeat.Footage;

/// <summary>
/// File names on a command line. FFMpegCore puts the name between double quotes as it is, and FFmpeg takes some names for
/// something else (<c>-y</c> an option, <c>concat:a|b</c> a protocol, <c>pipe:0</c> a pipe). So every name gets FFmpeg's
/// <c>file:</c> prefix, behind which nothing has a meaning, and quotes are escaped by the rules .NET splits arguments by on every system.
/// </summary>
internal static class CommandText
{
    /// <summary>The full path with the prefix, fit to stand between double quotes.</summary>
    public static string QuotedFile(string path)
    {
        var text = new System.Text.StringBuilder("file:");
        var backslashes = 0;
        foreach (var c in Path.GetFullPath(path))
        {
            // Backslashes are themselves except before a quote, where each counts double.
            if (c == '"') text.Append('\\', backslashes + 1);
            backslashes = c == '\\' ? backslashes + 1 : 0;
            text.Append(c);
        }

        return text.Append('\\', backslashes).ToString();
    }
}
