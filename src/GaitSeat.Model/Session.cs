using System.Globalization;

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
    public ConsentGap? Against(ConsentUse use)
    {
        var word = use.ToString().ToLowerInvariant();
        return Terms.Standing switch
        {
            ConsentStanding.Ended => new("consent_ended", string.Create(CultureInfo.InvariantCulture, $"the consent of rider {Rider} ended with {Terms.Until:yyyy-MM-dd}")),
            ConsentStanding.NotNamed => new("not_in_consent_file", Rider is null ? "the row names no rider whose consent could be looked up" : $"the consent file does not name rider {Rider}"),
            ConsentStanding.Forgotten => new("forgotten", "the rider was forgotten"),
            _ when !Terms.Covers(use) => new("consent_without_" + word, $"the consent of rider {Rider} does not cover '{word}'"),
            _ => Consent ? null : new("no_consent", "the sheet says no consent"),
        };
    }
}
