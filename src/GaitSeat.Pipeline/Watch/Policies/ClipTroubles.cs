namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>Something that can pass: the same clip may go through a little later.</summary>
public sealed class CanPassException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The disk is full or a share is gone; no clip can be done until it is back.</summary>
public sealed class StorageGoneException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The clip's process ended without a word: a native crash, no memory, or ended from outside.</summary>
/// <param name="tooOften">It did so before, as often as a clip may: not tried now.</param>
public sealed class ClipCrashException(string message, bool tooOften = false) : Exception(message)
{
    public bool TooOften => tooOften;
}

/// <summary>Another worker has this clip in hand.</summary>
public sealed class ClipElsewhereException(string message) : Exception(message);
