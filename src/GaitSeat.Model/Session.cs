namespace GaitSeat.Model;

/// <summary>One row of the session sheet: who rides in a clip, under a pseudonym, and what is known of the tack.</summary>
/// <param name="ClipFile">File name within the clip folder.</param>
/// <param name="Rider">Pseudonym.</param>
/// <param name="Horse">Pseudonym.</param>
/// <param name="Rein"><c>left</c>, <c>right</c> or null.</param>
/// <param name="Consent">Whether this footage may be measured on the day the sheet was read: the row says yes, and a consent file, where there is one, agrees.</param>
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
    IReadOnlyDictionary<string, string> Extra)
{
    /// <summary>How far the consent reaches.</summary>
    public ConsentTerms Terms { get; init; } = ConsentTerms.Unlimited;

    /// <returns>Null where nothing stands against the use.</returns>
    public ConsentGap? Against(ConsentUse use) => Terms.Against(use, Rider) ?? (Consent ? null : new("no_consent", "the sheet says no consent"));
}
