using System.Text;

namespace GaitSeat.Store;

/// <summary>The bytes of a sheet as text, or why they are none.</summary>
internal static class SheetText
{
    /// <summary>10 MB hold some 100 000 clips; a larger file is none.</summary>
    private const int LargestBytes = 10_000_000;
    private const string Remedy = "Save the sheet as CSV in UTF-8.";
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads the whole file. The byte order mark is taken off.</summary>
    /// <param name="called">What such a file is called.</param>
    /// <returns>The text, or a problem; one of the two.</returns>
    internal static (string? Text, SheetProblem? Problem) Read(string path, string called)
    {
        var file = new FileInfo(path);
        if (!file.Exists) return (null, new(null, null, $"There is no {called} '{path}'."));
        if (file.Length > LargestBytes) return (null, new(null, null, $"'{path}' has {file.Length} bytes; a {called} has at most {LargestBytes}."));
        return Decode(File.ReadAllBytes(path), path);
    }

    private static (string? Text, SheetProblem? Problem) Decode(byte[] bytes, string path)
    {
        ReadOnlySpan<byte> span = bytes;
        if (StartsWithUtf16Mark(span)) return (null, new(null, null, $"'{path}' is in UTF-16. {Remedy}"));
        if (span.StartsWith(Encoding.UTF8.Preamble)) span = span[Encoding.UTF8.Preamble.Length..];
        var zero = span.IndexOf((byte)0);
        if (zero >= 0) return (null, new(LineAt(span, zero), null, $"'{path}' holds zero bytes: it is in UTF-16 or no text at all. {Remedy}"));
        try
        {
            return (Strict.GetString(span), null);
        }
        catch (DecoderFallbackException e)
        {
            var found = e.BytesUnknown is { Length: > 0 } b ? $"byte 0x{b[0]:X2} is" : "a byte is";
            return (null, new(LineAt(span, Math.Clamp(e.Index, 0, span.Length)), null, $"{found} not UTF-8: '{path}' is in another encoding such as Latin-1 or Windows-1252. {Remedy}"));
        }
    }

    private static bool StartsWithUtf16Mark(ReadOnlySpan<byte> bytes) =>
        bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..];

    private static int LineAt(ReadOnlySpan<byte> bytes, int index) => 1 + bytes[..index].Count((byte)'\n');
}
