namespace GaitSeat.Store;

/// <summary>One thing wrong with a session sheet.</summary>
/// <param name="Line">1-based line of the file; null where it is the file as a whole.</param>
/// <param name="Column">Column name; null where it is the line as a whole.</param>
/// <param name="Message">What was found and what is allowed.</param>
public sealed record SheetProblem(int? Line, string? Column, string Message)
{
    /// <summary>Name of the file it is in, where it is another than the sheet.</summary>
    public string? File { get; init; }

    /// <summary>One line for people: where, then what.</summary>
    public override string ToString() => (File is null ? "" : File + ": ") + Place();

    private string Place() => (Line, Column) switch
    {
        (null, null) => Message,
        (null, _) => $"column {Column}: {Message}",
        (_, null) => $"line {Line}: {Message}",
        _ => $"line {Line}, column {Column}: {Message}",
    };
}
