using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// Which clips may leave the house: those whose row of the sheet said yes when they were measured, and whose consent, where the sheet of today is given, still stands and covers exports.
/// A clip without a row has nobody's yes.
/// </summary>
internal static class ConsentCheck
{
    internal const string NotOnRecord = "no_consent_on_record";
    internal const string TakenBack = "consent_taken_back";
    internal const string NotInSheet = "not_in_the_sheet";

    /// <param name="hasRow">Whether the clip had a row when it was measured; without consent it would not be in the dataset.</param>
    /// <param name="sheet">The sheet of today by clip file; null where none is given.</param>
    /// <returns>Null where it may; else the reason.</returns>
    internal static string? Against(string clipFile, bool hasRow, IReadOnlyDictionary<string, Session>? sheet) =>
        !hasRow ? NotOnRecord
        : sheet is null ? null
        : !sheet.TryGetValue(clipFile, out var row) ? NotInSheet
        : row.Against(ConsentUse.Export) is not { } gap ? null
        : gap.Reason == "no_consent" ? TakenBack : gap.Reason;
}
