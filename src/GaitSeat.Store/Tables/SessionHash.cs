using System.Security.Cryptography;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// Tells whether a clip's row of the sheet was changed: the row carries the rider's size, from which every centimetre comes.
/// The file name is left out, so that a renamed clip stays the same clip.
/// </summary>
internal static class SessionHash
{
    internal static string? Of(Session? session)
    {
        if (session is null) return null;
        var extra = session.Extra.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => new[] { p.Key, p.Value });
        object?[] parts =
        [
            session.SessionDate, session.Season, session.Rider, session.Horse,
            session.Lengths.StatureCm, session.Lengths.ThighCm, session.Lengths.LowerLegCm,
            session.StirrupHole, session.LeatherCm, session.Rein, session.Consent, session.Note, extra,
        ];
        return Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(parts)));
    }
}
