using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Sight;

/// <summary>The first look through a clip: who rides, and where in the picture.</summary>
public sealed record ScoutSettings
{
    /// <summary>Frames looked at, 1/s. 5: a trotting horse moves less than a third of its own length between two looks; with 4 a rider who lands from a jump was lost.</summary>
    [Range(0.5, 60.0)]
    public double RateHz { get; init; } = 5;

    /// <summary>
    /// Clips of at least this length, s, are first glanced through, key frame by key frame, and the looks are taken only about glances that show a horse or a person. In shorter ones, whose ends are looked at
    /// anyway, starting FFmpeg again costs what is saved.
    /// </summary>
    [Range(0.0, 1e6)]
    public double GlanceFromSeconds { get; init; } = 15;

    /// <summary>
    /// Longest time from one glance to the next, s, in which nobody can have come and gone unnoticed. Phones write a key frame a second. Who crosses the picture within 1.25 s shows one stride (0.7 s) and a half, too
    /// little for a spell. Where key frames lie further apart, everything is looked at.
    /// </summary>
    [Range(0.1, 5.0)]
    public double GlanceApartMaximumSeconds { get; init; } = 1.25;

    /// <summary>Score from which a horse or a person counts in a glance, 0..1. Lower than in a look: a false one costs two seconds of looks, a missed one may cost strides.</summary>
    [Range(0.01, 1.0)]
    public double GlanceScoreMinimum { get; init; } = 0.1;

    /// <summary>How long the rider may go unseen within one track, s. A track is longest lost behind a post or a jump stand.</summary>
    [Range(0.0, 10.0)]
    public double GapMaximumSeconds { get; init; } = 1.2;

    /// <summary>How far a box may lie from where its track leads, in box heights. Half the height is a jump no rider makes in 0.2 s against a following camera.</summary>
    [Range(0.05, 3.0)]
    public double JumpMaximumHeights { get; init; } = 0.6;

    /// <summary>By what factor a box may grow or shrink against its track. Boxes that lose the legs shrink to about 0.6.</summary>
    [Range(1.0, 5.0)]
    public double GrowthMaximum { get; init; } = 1.9;

    /// <summary>Least share of the looks with a horse in view in which the person sits on one, 0..1. A bystander whom a horse passes stays well below.</summary>
    [Range(0.0, 1.0)]
    public double MountedShareMinimum { get; init; } = 0.4;

    /// <summary>Length of the window for the median of box size, s: longer than two strides (0.8 s each), so that bounce and lost legs fall out.</summary>
    [Range(0.1, 20.0)]
    public double SizeWindowSeconds { get; init; } = 2.4;

    /// <summary>Length of the window for the straight line fitted to the box's place, s: more than one stride, so that the crop does not bounce with the rider.</summary>
    [Range(0.1, 20.0)]
    public double PlaceWindowSeconds { get; init; } = 1.0;

    /// <summary>A second rider counts as such from this share of the first one's weight (score x height x time on a horse), 0..1.</summary>
    [Range(0.0, 1.0)]
    public double SecondRiderShare { get; init; } = 0.25;

    /// <summary>Score from which another person is believed, so that their head is blurred in pictures, 0..1. People stand at 0.4 and more, mostly; below lie bushes and parts of horse and rider, whose blur would hide what is to be seen.</summary>
    [Range(0.01, 1)]
    public double OtherScoreMinimum { get; init; } = 0.35;
}
