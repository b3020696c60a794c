namespace GaitSeat.Review.Web;

/// <summary>A frame as it is marked.</summary>
/// <param name="TimeSeconds">Of the frame, s from the start of the video.</param>
/// <param name="Angles">By hand beside the tool's, sentences.</param>
/// <param name="Said">What was done; null where nothing was.</param>
internal sealed record ShownMarks(double TimeSeconds, IReadOnlyList<ShownMark> Points, IReadOnlyList<string> Angles, string? Said);

/// <param name="Tool">The tool's point; null where it has none.</param>
/// <param name="Own">The judge's mark that stands; null where there is none.</param>
internal sealed record ShownMark(string Point, string Label, SharePoint? Tool, SharePoint? Own);

/// <summary>A place as shares of the picture's width and height.</summary>
internal sealed record SharePoint(double X, double Y);

/// <summary>What the page sends to mark a frame.</summary>
/// <param name="Began"><c>tool</c> or <c>blind</c>.</param>
internal sealed record GivenMarks(string? Id, double TimeSeconds, string? Began, IReadOnlyList<GivenMark>? Points);

/// <param name="X">Share of the picture's width; null, with <paramref name="Y"/>, to take a mark back.</param>
internal sealed record GivenMark(string? Point, double? X, double? Y);
