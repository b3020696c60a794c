using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// Settings of the optical flow behind the trunk anchor and the camera's motion. Where no source is named the default is our own choice,
/// tried on made-up scenes and rendered clips. "Working px" are px of the picture after reduction to <see cref="WorkingWidthPx"/>.
/// </summary>
public sealed record FlowSettings
{
    /// <summary>Pictures wider than this are reduced by a whole factor before they are followed, px. Own choice: a rider 150 px tall keeps enough detail at full size.</summary>
    [Range(160, 3840)]
    public int WorkingWidthPx { get; init; } = 1280;

    /// <summary>Seed of the trial fits: the same clip gives the same numbers.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 1;

    public MatchSettings Match { get; init; } = new();

    public TrunkSettings Trunk { get; init; } = new();

    public SurroundingsSettings Surroundings { get; init; } = new();

    public CutSettings Cut { get; init; } = new();
}

/// <summary>How one small window is found again in the next frame.</summary>
public sealed record MatchSettings
{
    /// <summary>Most steps of the search on one pyramid level.</summary>
    [Range(1, 100)]
    public int Iterations { get; init; } = 12;

    /// <summary>The search ends with a step shorter than this, px of the level.</summary>
    [Range(0.0001, 0.5)]
    public double SettledPx { get; init; } = 0.01;

    /// <summary>A window that strays farther from its guess on one level is lost, px of the level (half a window).</summary>
    [Range(0.5, 64)]
    public double FarthestPx { get; init; } = 8;

    /// <summary>A window followed on and back again must come home within this, px of the level, along the direction its texture can show.</summary>
    [Range(0.01, 10)]
    public double RoundTripPx { get; init; } = 0.5;

    /// <summary>Largest part of a window's contrast (variance) that may stay unlike when it is found again: two unrelated windows keep about all of it.</summary>
    [Range(0.01, 2)]
    public double MaxUnlikeness { get; init; } = 0.4;

    /// <summary>Weakest texture that counts: root mean square gradient over a window along its strongest direction, grey levels (of 255) a px.</summary>
    [Range(0.05, 100)]
    public double MinGradient { get; init; } = 1.5;

    /// <summary>Brightness noise assumed at least, grey levels (of 255).</summary>
    [Range(0.01, 50)]
    public double NoiseGrey { get; init; } = 1;

    /// <summary>How far true motion may lie from its guess, working px (one standard deviation): holds a window on an edge back from sliding along it.</summary>
    [Range(0.1, 200)]
    public double GuessSpreadPx { get; init; } = 4;

    /// <summary>How well even the sharpest window follows its patch, working px: caps the say of one window in a fit.</summary>
    [Range(0.005, 5)]
    public double BestPrecisionPx { get; init; } = 0.1;
}

/// <summary>Where the trunk is looked for, and when a fit counts. Lengths in shares of the height of the rider's box.</summary>
public sealed record TrunkSettings
{
    /// <summary>The seat's place down the rider's box, 0 top, 1 bottom, where no better hint is given.</summary>
    [Range(0.2, 0.9)]
    public double SeatDownBox { get; init; } = 0.58;

    /// <summary>The trunk begins this far below the seat (negative: above).</summary>
    [Range(-0.5, 0.5)]
    public double Top { get; init; } = 0.02;

    /// <summary>The trunk ends this far below the seat, at the lower barrel: clear of the horse's legs.</summary>
    [Range(0.1, 1)]
    public double Bottom { get; init; } = 0.38;

    /// <summary>The trunk reaches this far before and behind the seat.</summary>
    [Range(0.1, 2)]
    public double Reach { get; init; } = 0.5;

    /// <summary>The rider's leg is cut out: widest half width of the corridor about the middle of the rider's box.</summary>
    [Range(0, 1)]
    public double LegHalfWidth { get; init; } = 0.2;

    /// <summary>Share of the horse box's height, from its top, below which the horse's legs begin.</summary>
    [Range(0.2, 1)]
    public double HorseLegsBelow { get; init; } = 0.62;

    /// <summary>Side of the square from which one window is taken.</summary>
    [Range(0.01, 0.5)]
    public double Cell { get; init; } = 0.06;

    /// <summary>Windows near the seat say more: standard deviation of the bell of their weights.</summary>
    [Range(0.05, 5)]
    public double Nearness { get; init; } = 0.35;

    /// <summary>Pyramid level: the coarsest at which the rider is still this tall, px.</summary>
    [Range(20, 2000)]
    public int RiderAtLevelPx { get; init; } = 130;

    /// <summary>Farthest the trunk is searched for between two frames where its speed is unknown.</summary>
    [Range(0.01, 2)]
    public double FarthestStep { get; init; } = 0.25;

    /// <summary>Weight left to a window that moves just like the surroundings.</summary>
    [Range(0, 1)]
    public double WeightLikeSurroundings { get; init; } = 0.15;

    /// <summary>Turn from frame to frame thought usual, rad (one standard deviation): 2 deg of pitch at 2.7 Hz and 30 fps peaks at 0.02 rad a frame.</summary>
    [Range(0.0001, 1)]
    public double TurnSpreadRad { get; init; } = 0.02;

    /// <summary>Change of size from frame to frame thought usual, as a share.</summary>
    [Range(0.0001, 1)]
    public double ZoomSpread { get; init; } = 0.003;

    /// <summary>A window farther from the fit is an outlier, working px.</summary>
    [Range(0.05, 20)]
    public double OutlierPx { get; init; } = 0.6;

    /// <summary>Where too few windows agree, the fit is tried once more with this many times the tolerance: a canter bends the trunk more than a trot.</summary>
    [Range(1, 10)]
    public double LooserFactor { get; init; } = 2.5;

    /// <summary>Trial fits through two windows each, beside one through each window alone.</summary>
    [Range(0, 10000)]
    public int Trials { get; init; } = 40;

    /// <summary>Fewest windows that make a fit.</summary>
    [Range(2, 1000)]
    public int MinPoints { get; init; } = 6;

    /// <summary>Fewest windows that make a fit, as a share of those looked for: a few always agree by chance.</summary>
    [Range(0, 1)]
    public double MinShare { get; init; } = 0.1;

    /// <summary>A fit whose standard error (from the windows' own information) is larger is not given, working px.</summary>
    [Range(0.01, 20)]
    public double MaxErrorPx { get; init; } = 0.5;
}

/// <summary>Where the surroundings are followed, and when a fit counts.</summary>
public sealed record SurroundingsSettings
{
    /// <summary>Kept free around the boxes of rider and horse, share of the rider's height (or, with a horse alone, a third of the horse's).</summary>
    [Range(0, 1)]
    public double Margin { get; init; } = 0.12;

    /// <summary>Windows across the picture: one is taken from each square of width over this.</summary>
    [Range(4, 64)]
    public int CellsAcross { get; init; } = 16;

    /// <summary>Turn from frame to frame thought usual, rad.</summary>
    [Range(0.0001, 1)]
    public double TurnSpreadRad { get; init; } = 0.02;

    /// <summary>Change of size from frame to frame thought usual, as a share.</summary>
    [Range(0.0001, 1)]
    public double ZoomSpread { get; init; } = 0.02;

    /// <summary>Bend of the motion across the picture thought usual (a pan moves the sides more than the middle), as a share of a half width.</summary>
    [Range(0.00001, 1)]
    public double BendSpread { get; init; } = 0.01;

    /// <summary>Windows near the seat say more: standard deviation of the bell of their weights, share of the picture's width.</summary>
    [Range(0.05, 10)]
    public double Nearness { get; init; } = 0.35;

    /// <summary>A window farther from the fit is an outlier, working px.</summary>
    [Range(0.05, 20)]
    public double OutlierPx { get; init; } = 0.6;

    /// <summary>Fewest windows that make a fit.</summary>
    [Range(3, 1000)]
    public int MinPoints { get; init; } = 8;

    /// <summary>Fewest windows that make a fit, as a share of those looked for: a few always agree by chance.</summary>
    [Range(0, 1)]
    public double MinShare { get; init; } = 0.1;

    /// <summary>Trial fits through two windows each.</summary>
    [Range(1, 10000)]
    public int Trials { get; init; } = 60;
}

/// <summary>When the picture is said to jump.</summary>
public sealed record CutSettings
{
    /// <summary>Only frames in which a smaller share of the surroundings was found again are looked at.</summary>
    [Range(0, 1)]
    public double FoundShare { get; init; } = 0.4;

    /// <summary>Two thumbnails that agree less than this, at their best shift, are different scenes (correlation).</summary>
    [Range(-1, 1)]
    public double ThumbnailCorrelation { get; init; } = 0.5;

    /// <summary>Largest shift tried, share of the thumbnail's side.</summary>
    [Range(0, 0.5)]
    public double LargestShift { get; init; } = 0.2;

    /// <summary>Contrast below which a thumbnail shows nothing, grey levels (of 255), one standard deviation.</summary>
    [Range(0.1, 100)]
    public double FlatGrey { get; init; } = 2;

    /// <summary>Two pictures that show nothing are still different from this difference of brightness, grey levels (of 255).</summary>
    [Range(1, 255)]
    public double FlatJumpGrey { get; init; } = 30;
}
