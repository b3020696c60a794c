namespace GaitSeat.Review.Web;

/// <summary>What the run screen shows.</summary>
/// <param name="Waiting">Clips of the folder without a row in the run.</param>
/// <param name="Hidden">Clips set aside that are not shown for want of consent.</param>
/// <param name="PutOff">Of the latest night.</param>
internal sealed record RunPage(
    int Measured, int SetAside, int Waiting, int Hidden, IReadOnlyList<ShownWorker> Workers, IReadOnlyList<SetAsideGroup> Groups, IReadOnlyList<PutOffClip> PutOff, IReadOnlyList<ShownNight> Nights);

/// <param name="Process"><c>running</c>, <c>gone</c> or <c>elsewhere</c>.</param>
/// <param name="Paused">Why it pauses; null where it does not.</param>
internal sealed record ShownWorker(string Name, string Process, string LastWord, string Does, string? Paused, IReadOnlyList<ClipInHand> InHand);

internal sealed record ClipInHand(string Clip, string Since);

internal sealed record SetAsideGroup(string Reason, IReadOnlyList<SetAsideClip> Clips);

internal sealed record SetAsideClip(string Key, string File, string Detail);

internal sealed record PutOffClip(string File, string Reason, string Detail);

/// <param name="Minutes">Spent on clips, over all workers.</param>
internal sealed record ShownNight(string Night, int Measured, int Flagged, int SetAside, int PutOff, int Strides, double Minutes);

/// <summary>What the page sends to have a clip tried again.</summary>
internal sealed record GivenClip(string? ClipKey);

internal sealed record RetriedClip(string Text, RunPage Page);
