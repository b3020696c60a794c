using System.Diagnostics;
using System.IO.Compression;
using System.Text;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>Files that are no spoilt video but a trap: they name other files or hosts, lead elsewhere, never end, or are called what a shell or FFmpeg would take for more than a name.</summary>
internal static class Traps
{
    /// <param name="sound">A whole clip.</param>
    /// <param name="elsewhere">A file outside that nothing may touch or take in.</param>
    /// <param name="port">Of a listener on this machine that nothing may call.</param>
    /// <returns>How many were laid.</returns>
    public static async Task<int> LayAsync(string folder, byte[] sound, string elsewhere, int port)
    {
        var laid = 0;
        foreach (var (name, text) in Playlists(elsewhere, port)) await PutAsync(name, Encoding.UTF8.GetBytes(text));
        foreach (var name in Names()) await PutAsync(name, [.. sound, .. Encoding.UTF8.GetBytes(name)]);
        await PutAsync("bomb.mp4", Bomb());
        foreach (var (name, target) in new[]
                 {
                     ("link-to-a-clip.mp4", Path.Combine(folder, "-i.mp4")), ("link-to-text.mp4", elsewhere), ("link-to-zeros.mp4", "/dev/zero"), ("link-to-chance.mp4", "/dev/urandom"),
                     ("link-to-kernel.mp4", "/proc/kmsg"), ("link-to-nothing.mp4", Path.Combine(folder, "not-there")), ("link-to-itself.mp4", Path.Combine(folder, "link-to-itself.mp4")),
                     ("link-to-a-folder.mp4", folder),
                 })
            File.CreateSymbolicLink(Path.Combine(folder, name), target);
        laid += 8;
        using (var pipe = Process.Start("mkfifo", [Path.Combine(folder, "pipe.mp4")])) await pipe.WaitForExitAsync();
        laid++;
        Directory.CreateDirectory(Path.Combine(folder, "folder.mp4"));
        return laid;

        async Task PutAsync(string name, byte[] bytes)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, name), bytes);
            laid++;
        }
    }

    private static IEnumerable<(string Name, string Text)> Playlists(string elsewhere, int port)
    {
        var url = $"http://127.0.0.1:{port}/trap.ts";
        yield return ("hls.mp4", $"#EXTM3U\n#EXT-X-TARGETDURATION:5\n#EXTINF:5,\n{url}\n#EXT-X-ENDLIST\n");
        yield return ("hls-file.ts", $"#EXTM3U\n#EXTINF:5,\nfile://{elsewhere}\n#EXT-X-ENDLIST\n");
        yield return ("hls-nested.mkv", $"#EXTM3U\n#EXT-X-STREAM-INF:BANDWIDTH=1\nhls.mp4\n");
        yield return ("hls-late.mp4", new string('\n', 2000) + $"#EXTM3U\n#EXTINF:5,\n{url}\n");
        yield return ("concat.mp4", $"ffconcat version 1.0\nfile '{elsewhere}'\nfile '{url}'\n");
        yield return ("dash.mp4", $"<?xml version=\"1.0\"?><MPD xmlns=\"urn:mpeg:dash:schema:mpd:2011\" type=\"static\"><Period><AdaptationSet><Representation id=\"1\"><BaseURL>{url}</BaseURL></Representation></AdaptationSet></Period></MPD>");
        yield return ("sdp.mp4", $"v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nm=video {port} RTP/AVP 96\na=rtpmap:96 H264/90000\n");
        yield return ("asx.wmv", $"<asx version=\"3.0\"><entry><ref href=\"{url}\"/></entry></asx>");
        yield return ("link.mov", $"[InternetShortcut]\nURL={url}\n");
        yield return ("rtsp.mov", $"rtsptextrtsp://127.0.0.1:{port}/x\n");
        yield return ("filter.mp4", $"movie={elsewhere}\n");
    }

    private static IEnumerable<string> Names() =>
    [
        "-i.mp4", "--.mp4", "%d.mp4", "%03d-%s%n.mp4", "concat:a|b.mp4", "file:a.mp4", "pipe:0.mp4", "a;touch pwned;.mp4", "$(touch pwned).mp4", "`touch pwned`.mp4", "a'b\"c.mp4",
        "line\nbreak.mp4", "tab\t.mp4", "back\\slash.mp4", "äöü-馬-🐴.mp4", "\u202egnp.mp4", "[bold]red[].mp4", "..mp4", "...mp4", "a..b.mp4", " leading.mp4", "trailing .mp4", "con.mp4",
        new string('l', 240) + ".mp4", "{0}.mp4", "http:::x.mp4", "a,b=c:d.mp4", "*.mp4", "?.mp4",
    ];

    /// <summary>A gigabyte of nothing in a megabyte.</summary>
    private static byte[] Bomb()
    {
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            var zeros = new byte[1 << 20];
            for (var i = 0; i < 1024; i++) zip.Write(zeros);
        }

        return packed.ToArray();
    }
}
