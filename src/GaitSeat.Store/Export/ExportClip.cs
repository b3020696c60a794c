namespace GaitSeat.Store;

/// <summary>A clip that may be exported.</summary>
/// <param name="WidthPx">Width of the upright picture; null where probing told nothing.</param>
internal sealed record ExportClip(string ClipKey, string? Rider, int? WidthPx, int? HeightPx)
{
    /// <summary>A name for files that says nothing of people, as a clip's file may.</summary>
    internal string Name => Store.ClipKey.InName(ClipKey);
}
