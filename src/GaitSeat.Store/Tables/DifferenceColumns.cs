using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>A difference, its standard error and its 95 % interval.</summary>
internal static class DifferenceColumns
{
    /// <param name="whole">The difference with every error there is: what the interval is made of.</param>
    internal static IEnumerable<Column<TRow>> Of<TRow>(string definition, Func<TRow, Measured> get, Func<TRow, Measured> whole) =>
    [
        Columns.Real<TRow>("difference", "see `unit`", definition, r => get(r).Value),
        Columns.Real<TRow>("difference_se", "see `unit`", "Standard error of `difference`.", r => get(r).StandardError),
        Columns.Real<TRow>("difference_low95", "see `unit`", "Lower end of the 95 % interval of the difference.", r => whole(r).Value - whole(r).HalfWidth95),
        Columns.Real<TRow>("difference_high95", "see `unit`", "Upper end.", r => whole(r).Value + whole(r).HalfWidth95),
    ];
}
