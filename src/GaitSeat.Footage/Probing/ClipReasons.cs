namespace GaitSeat.Footage;

/// <summary>The words under which a file is set aside. They are counted and compared, so they never change.</summary>
public static class ClipReasons
{
    /// <summary>A folder, a pipe, or nothing at all under that name.</summary>
    public const string PathNotAFile = "path_not_a_file";

    /// <summary>Zero bytes.</summary>
    public const string FileEmpty = "file_empty";

    /// <summary>Cannot be opened, or FFmpeg cannot make sense of it for a reason that has no word of its own.</summary>
    public const string Unreadable = "unreadable";

    /// <summary>Text or another kind of file, whatever its name.</summary>
    public const string NotAVideo = "not_a_video";

    /// <summary>Audio only (a cover picture does not count).</summary>
    public const string NoVideoStream = "no_video_stream";

    /// <summary>A picture file.</summary>
    public const string StillImage = "still_image";

    /// <summary>Fewer frames than <see cref="ProbeSettings.MinFrames"/>.</summary>
    public const string TooShort = "too_short";

    /// <summary>A video stream without a single frame.</summary>
    public const string ZeroLength = "zero_length";

    /// <summary>The end is missing. As a reason for left-out frames: the part up to the damage is measured.</summary>
    public const string Truncated = "truncated";

    /// <summary>As a reason for left-out frames only: FFmpeg reported damage within the clip.</summary>
    public const string Damaged = "damaged";

    /// <summary>Encrypted or under copy protection.</summary>
    public const string Encrypted = "encrypted";

    /// <summary>This FFmpeg has no decoder for it.</summary>
    public const string UnknownCodec = "unknown_codec";

    /// <summary>A side longer than <see cref="ProbeSettings.MaxSidePx"/>.</summary>
    public const string TooLargePicture = "too_large_picture";

    /// <summary>A playlist or reference file: it holds no pictures but names other files.</summary>
    public const string PointsElsewhere = "points_elsewhere";
}
