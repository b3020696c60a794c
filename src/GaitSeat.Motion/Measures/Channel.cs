using GaitSeat.Model;
using GaitSeat.Motion.Tracks;

namespace GaitSeat.Motion.Measures;

/// <summary>The signals a stride's measures are made of. Lengths in legs.</summary>
internal enum Channel
{
    EarForward,
    EarUp,
    ShoulderForward,
    ShoulderUp,
    HipForward,
    HipUp,
    KneeForward,
    KneeUp,
    AnkleForward,
    AnkleUp,
    HeelForward,
    HeelUp,
    ToeForward,
    ToeUp,
    Seat,
    OverStirrup,
    TreadInTrunk,
    WristForward,
    WristUp,
}

/// <summary>Where each channel comes from.</summary>
internal static class Channels
{
    public const int Count = (int)Channel.WristUp + 1;

    private static readonly BodyPoint[] Points =
        [BodyPoint.Ear, BodyPoint.Shoulder, BodyPoint.Hip, BodyPoint.Knee, BodyPoint.Ankle, BodyPoint.Heel, BodyPoint.Toe];

    /// <summary>The body point of a picture channel; null for those in the trunk frame or relative.</summary>
    public static BodyPoint? Point(Channel channel) =>
        (int)channel < 2 * Points.Length ? Points[(int)channel / 2] : null;

    /// <summary>Of a picture channel: whether it is the forward one of its point.</summary>
    public static bool IsForward(Channel channel) => (int)channel % 2 == 0;

    /// <summary>Whether a channel runs along the way the horse goes.</summary>
    public static bool IsAhead(Channel channel) =>
        Point(channel) is null ? channel is Channel.TreadInTrunk or Channel.WristForward : IsForward(channel);

    public static Smoothed Of(SegmentSignals signals, Channel channel) => channel switch
    {
        Channel.Seat => signals.Seat,
        Channel.OverStirrup => signals.OverStirrup,
        Channel.TreadInTrunk => signals.TreadInTrunk,
        Channel.WristForward => signals.WristForwardInTrunk,
        Channel.WristUp => signals.WristUpInTrunk,
        _ => (IsForward(channel) ? signals.Forward : signals.Up)[(int)Point(channel)!.Value],
    };
}
