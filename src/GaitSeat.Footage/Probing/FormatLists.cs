namespace GaitSeat.Footage;

/// <summary>
/// FFmpeg's container names. Only the allowed ones are ever opened: those hold their pictures themselves. (QuickTime and MP4 may name data
/// files elsewhere; FFmpeg follows that only with its <c>enable_drefs</c> on, which is off by default and stays off.)
/// </summary>
internal static class FormatLists
{
    /// <summary>Containers of moving pictures, and of sound alone so that those can be told by name.</summary>
    public const string Allowed =
        "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,avi,mpegts,mpeg,mpegvideo,m4v,h264,hevc,obu,av1,ivf,flv,asf,mxf,gxf,dv,ogg,nut,rm,wtv,vob,"
        + "wav,mp3,aac,ac3,eac3,flac,aiff,w64,amr,caf,au";

    private static readonly string[] References = ["hls", "dash", "concat", "sdp", "rtsp", "imf", "applehttp", "webm_dash_manifest", "vobsub"];

    private static readonly string[] Pictures = ["image2", "image2pipe", "gif", "apng", "ico", "mpo"];

    public static bool NamesOtherFiles(string format) => Parts(format).Any(References.Contains);

    public static bool IsPicture(string format) =>
        Parts(format).Any(part => Pictures.Contains(part) || part.EndsWith("_pipe", StringComparison.Ordinal));

    /// <summary>Whether the container lists where its key frames are, so that a seek lands on one before the time asked for.</summary>
    public static bool HasKeyFrameIndex(string format) => Parts(format).Any(part => part is "mov" or "mp4");

    private static string[] Parts(string format) => format.Split(',');
}
