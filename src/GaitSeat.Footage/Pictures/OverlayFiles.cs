namespace GaitSeat.Footage.Pictures;

/// <summary>The pictures made of a clip.</summary>
/// <param name="SitStillPath">A sit of the stride with the median rise; null where the clip has no stride.</param>
/// <param name="TopStillPath">The top that follows it; null where the clip has no stride.</param>
public sealed record OverlayFiles(string VideoPath, string? SitStillPath, string? TopStillPath);
