namespace GaitSeat.Store;

/// <summary>The first rows of an answer.</summary>
/// <param name="Rows">Values by column: text, numbers, <see cref="DateOnly"/>; null for null.</param>
/// <param name="More">Whether there are more rows than were asked for.</param>
public sealed record Answer(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<object?>> Rows, bool More);
