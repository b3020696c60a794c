using GaitSeat.Review.Pictures;
using GaitSeat.Review.Questions;

namespace GaitSeat.Review.Web;

/// <summary>A line of the queue as the page gets it.</summary>
/// <param name="Answer">Term of the judge's answer; null where there is none.</param>
internal sealed record QueueLine(string Id, int Position, string? Rider, string Fault, string Drawn, string? Answer);

/// <param name="Hidden">Questions of the run that are not shown for want of consent.</param>
internal sealed record QueuePage(int Total, int Judged, int Hidden, string? NextOpen, IReadOnlyList<QueueLine> Lines);

/// <summary>What the screen shows of one question. Times are seconds from the start of the video.</summary>
internal sealed record ShownQuestion(
    string Id,
    int Position,
    int Total,
    int Judged,
    string? PreviousId,
    string? NextId,
    ShownClip Clip,
    ShownSpell Spell,
    string? Fault,
    string Title,
    string Asked,
    IReadOnlyList<FaultChoice> Choices,
    ShownReasons Reasons,
    string HistoryText,
    IReadOnlyList<OtherFinding> Others,
    ShownCard? Card,
    ShownAnswer? Answer);

/// <param name="Refusal">Why the clip cannot be shown; null where it can.</param>
internal sealed record ShownClip(string Url, string? Refusal, int WidthPx, int HeightPx, double? FrameRateHz, bool HasTracks);

internal sealed record ShownSpell(string? Rider, string? Horse, string? Date, string? Rein, int Number, double StartSeconds, double EndSeconds, double FlagStartSeconds, double FlagEndSeconds, IReadOnlyList<double> SitSeconds);

/// <param name="Own">The spell's own mean of the measure, with its interval.</param>
internal sealed record BesideList(string Measure, string Unit, string Own, IReadOnlyList<BesideLine> Lines);

/// <param name="Kind"><c>earlier</c> or <c>later</c> of the same rider, or <c>best</c> of another.</param>
internal sealed record BesideLine(string Id, string Kind, string? Rider, string? Date, string Value);

/// <param name="IsMirrored">Whether it must be shown mirrored for both horses to go the same way.</param>
internal sealed record ShownBeside(ShownClip Clip, IReadOnlyList<StridePair> Pairs, bool IsMirrored, OverlayTrack? Tracks);

internal sealed record FaultChoice(string Term, string Label);

/// <param name="Why">Why the spell is in the queue.</param>
/// <param name="Rule">What the rule says.</param>
/// <param name="Model">What the fault model says.</param>
internal sealed record ShownReasons(string Why, IReadOnlyList<string> Rule, IReadOnlyList<string> Model);

/// <param name="Id">Of its question where it is in the queue.</param>
internal sealed record OtherFinding(string Label, string Text, string? Id);

internal sealed record ShownCard(string Title, IReadOnlyList<CardSection> Sections);

internal sealed record CardSection(string Heading, string Text);

internal sealed record ShownAnswer(string Answer, string Label, string? Note, string JudgedAt);

/// <summary>What the page sends to answer.</summary>
/// <param name="Fault">Which fault is there; only for a spell drawn at random.</param>
internal sealed record GivenAnswer(string? Id, string? Answer, string? Fault, string? Note);

internal sealed record UndoneAnswer(string? Id, string Text);

/// <param name="Measures">What is drawn, with units.</param>
/// <param name="Span">First and last day; null without a week.</param>
/// <param name="Hidden">Clips of the run that are not shown for want of consent.</param>
internal sealed record SeasonPage(IReadOnlyList<string> Measures, string? Span, int Weeks, int Hidden, IReadOnlyList<SeasonRider> Riders);

/// <param name="Strides">Trusted ones.</param>
internal sealed record SeasonRider(int Number, string Name, int Clips, int Spells, int Strides);

/// <param name="Findings">Flags; with the question's id where it is in the queue.</param>
internal sealed record ShownRider(IReadOnlyList<SeasonPanel> Panels, IReadOnlyList<string> Changes, IReadOnlyList<string> LeftOut, IReadOnlyList<OtherFinding> Findings);

/// <param name="Words">The same in words.</param>
internal sealed record SeasonPanel(string Title, string Svg, string Words);
