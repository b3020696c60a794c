using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Puts the terms of the consent file to the rows of the sheet.</summary>
internal static class ConsentRows
{
    /// <summary>How long before its end a consent is told of, days: time to ask anew before the next lesson or two. No source.</summary>
    private const int NoticeDays = 30;

    internal static SheetResult Apply(SheetResult sheet, string consentPath, DateOnly today)
    {
        var (terms, errors) = ConsentFile.Read(consentPath, today);
        if (terms is null) return sheet;
        var sessions = sheet.Sessions.ToDictionary(s => s.Key, s => With(s.Value, terms), StringComparer.OrdinalIgnoreCase);
        return new(sessions, [.. sheet.Errors, .. errors], [.. sheet.Warnings, .. EndingSoon(sheet, terms, today)]);
    }

    /// <summary>A no of the row stays a no, whatever the file says of the rider.</summary>
    private static Session With(Session row, IReadOnlyDictionary<string, ConsentTerms> terms)
    {
        if (!row.Consent) return row;
        var own = row.Rider is { } rider && terms.TryGetValue(rider, out var found) ? found : new(ConsentUse.None, null, ConsentStanding.NotNamed);
        return row with { Terms = own, Consent = own.Covers(ConsentUse.Measure) };
    }

    private static IEnumerable<SheetProblem> EndingSoon(SheetResult sheet, IReadOnlyDictionary<string, ConsentTerms> terms, DateOnly today)
    {
        var riders = sheet.Sessions.Values.Select(s => s.Rider).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        return terms.Where(t => t.Value.Standing == ConsentStanding.Given && t.Value.Until <= today.AddDays(NoticeDays) && riders.Contains(t.Key)).OrderBy(t => t.Key, StringComparer.Ordinal)
            .Select(t => new SheetProblem(null, null, string.Create(CultureInfo.InvariantCulture, $"the consent of rider {t.Key} ends with {t.Value.Until:yyyy-MM-dd}; what was measured is erased by the first run after that.")) { File = ConsentFile.FileName });
    }
}
