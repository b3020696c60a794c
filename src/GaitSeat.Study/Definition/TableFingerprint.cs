using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;

namespace GaitSeat.Study.Definition;

/// <summary>Names the rows a question was asked of: the same values in the same order have the same fingerprint.</summary>
public static class TableFingerprint
{
    /// <summary>SHA-256, lower-case hex, over names and values of all columns, by name; texts are ended by a zero, a missing one is a one.</summary>
    public static string Of(StudyTable table)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var column in table.Columns.Numbers.Concat(table.Columns.Texts).Order(StringComparer.Ordinal))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(column + "\0"));
            if (table.IsNumber(column)) hash.AppendData(MemoryMarshal.AsBytes(table.Numbers(column).AsSpan()));
            else foreach (var text in table.Labels(column)) hash.AppendData(Encoding.UTF8.GetBytes(text is null ? "\u0001" : text + "\0"));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
