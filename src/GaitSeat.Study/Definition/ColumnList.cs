namespace GaitSeat.Study.Definition;

/// <summary>Names of the columns a study may ask for, and which of them hold numbers.</summary>
public sealed record ColumnList(IReadOnlySet<string> Numbers, IReadOnlySet<string> Texts)
{
    private const string ErrorEnding = "_se";

    public bool IsNumber(string column) => Numbers.Contains(column);

    public bool Has(string column) => IsNumber(column) || Texts.Contains(column);

    /// <summary>What to say there is in place of an unknown name: the columns that share a word with it, else all but standard errors.</summary>
    public IReadOnlyList<string> Near(string unknown)
    {
        var words = unknown.Split('_');
        string[] all = [.. Numbers.Concat(Texts).Order(StringComparer.Ordinal)];
        string[] near = [.. all.Where(c => c.Split('_').Intersect(words).Any(w => w.Length > 2 && w != "pct"))];
        return near.Length > 0 ? near : [.. all.Where(c => !c.EndsWith(ErrorEnding, StringComparison.Ordinal))];
    }
}
