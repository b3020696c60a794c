namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>Something that can pass: the same clip may go through a little later.</summary>
public sealed class CanPassException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The disk is full or a share is gone; no clip can be done until it is back.</summary>
public sealed class StorageGoneException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>
/// The clip's process or its FFmpeg was ended by SIGKILL or another signal from outside, as the system does when memory runs out: passing, but a clip that always
/// comes to this end is no better than one that crashes.
/// </summary>
public sealed class ClipKilledException(string message) : Exception(message);

/// <summary>The clip's process ended without a word, as by a native crash.</summary>
/// <param name="tooOften">It did so before, as often as a clip may: not tried now.</param>
public sealed class ClipCrashException(string message, bool tooOften = false) : Exception(message)
{
    public bool TooOften => tooOften;
}

/// <summary>Another worker has this clip in hand.</summary>
public sealed class ClipElsewhereException(string message) : Exception(message);
