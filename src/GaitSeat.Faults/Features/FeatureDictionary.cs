using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace GaitSeat.Faults.Features;

/// <summary>The page that says what every feature is, made from the descriptions the models are trained by.</summary>
[SuppressMessage("Naming", "CA1711", Justification = "As the data dictionary.")]
public static class FeatureDictionary
{
    private const string Head =
        """
        # Features of the fault models

        Made from the code; a test holds it to the catalogue. Regenerate it with `GAITSEAT_UPDATE=1 dotnet test tests/GaitSeat.Faults.Tests`.

        One vector a spell of rising trot with enough trusted strides. A value that is missing is filled with the mean of the training spells, and a
        flag beside it tells the model that it was; both are learnt from the training riders alone. Missing values are counted in the model card.


        """;

    /// <summary>Markdown with LF line ends.</summary>
    public static string ToMarkdown()
    {
        var page = new StringBuilder(Head.ReplaceLineEndings("\n"));
        page.Append("| feature | unit | definition | missing when |\n|---|---|---|---|\n");
        foreach (var f in FeatureCatalogue.All)
            page.Append(CultureInfo.InvariantCulture, $"| `{f.Name}` | {f.Unit} | {f.Definition} | {(f.MissingMeans.Length == 0 ? "never" : f.MissingMeans)} |\n");
        return page.ToString();
    }
}
