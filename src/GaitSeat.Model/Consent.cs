using System.Globalization;

namespace GaitSeat.Model;

/// <summary>What a rider may agree to; each is agreed to by itself.</summary>
[Flags]
public enum ConsentUse
{
    None = 0,

    /// <summary>Footage is measured and its figures are kept.</summary>
    Measure = 1,

    /// <summary>The coach sees footage and figures on the review page.</summary>
    Show = 2,

    /// <summary>Figures go into studies and fault models.</summary>
    Study = 4,

    /// <summary>Figures and body points leave the house in open formats.</summary>
    Export = 8,

    /// <summary>A report with stills and a short clip is made for the rider.</summary>
    Report = 16,

    Everything = Measure | Show | Study | Export | Report,
}

/// <summary>Whether a consent stands on the day the sheet was read.</summary>
public enum ConsentStanding
{
    Given,

    /// <summary>Its last day is over.</summary>
    Ended,

    /// <summary>There is a consent file, and it does not name the rider.</summary>
    NotNamed,

    /// <summary>The rider was forgotten, and nothing of them is to be kept again.</summary>
    Forgotten,
}

/// <summary>How far a rider's consent reaches.</summary>
/// <param name="Until">The last day on which it holds; null where none was set.</param>
public sealed record ConsentTerms(ConsentUse Uses, DateOnly? Until, ConsentStanding Standing)
{
    /// <summary>A yes in the sheet where no consent file says more.</summary>
    public static ConsentTerms Unlimited { get; } = new(ConsentUse.Everything, null, ConsentStanding.Given);

    /// <summary>Whether it holds for a use.</summary>
    public bool Covers(ConsentUse use) => Standing == ConsentStanding.Given && Uses.HasFlag(use);

    /// <param name="rider">Whose consent it is, for the sentence; null where the row names nobody.</param>
    /// <returns>Null where they cover the use.</returns>
    public ConsentGap? Against(ConsentUse use, string? rider)
    {
        var word = use.ToString().ToLowerInvariant();
        return Standing switch
        {
            ConsentStanding.Ended => new("consent_ended", string.Create(CultureInfo.InvariantCulture, $"the consent of rider {rider} ended with {Until:yyyy-MM-dd}")),
            ConsentStanding.NotNamed => new("not_in_consent_file", rider is null ? "the row names no rider whose consent could be looked up" : $"the consent file does not name rider {rider}"),
            ConsentStanding.Forgotten => new("forgotten", "the rider was forgotten"),
            _ => Covers(use) ? null : new("consent_without_" + word, $"the consent of rider {rider} does not cover '{word}'"),
        };
    }
}

/// <summary>What stands against a use of someone's footage.</summary>
/// <param name="Reason">Snake_case word that can be counted.</param>
/// <param name="Sentence">For people, without a full stop.</param>
public sealed record ConsentGap(string Reason, string Sentence);
