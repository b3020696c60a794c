namespace GaitSeat.Model;

/// <summary>One row of the session sheet: who rides in a clip, under a pseudonym, and what is known of the tack.</summary>
/// <param name="ClipFile">File name within the clip folder.</param>
/// <param name="Rider">Pseudonym.</param>
/// <param name="Horse">Pseudonym.</param>
/// <param name="Rein"><c>left</c>, <c>right</c> or null.</param>
/// <param name="Consent">Whether the rider agreed to this footage being processed.</param>
/// <param name="Extra">Columns of the sheet we do not know, kept as they are.</param>
public sealed record Session(
    string ClipFile,
    DateOnly? SessionDate,
    string? Season,
    string? Rider,
    string? Horse,
    BodyLengths Lengths,
    double? StirrupHole,
    double? LeatherCm,
    string? Rein,
    bool Consent,
    string? Note,
    IReadOnlyDictionary<string, string> Extra);
