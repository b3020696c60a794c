using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Counts the packets of a video stream and finds its last time, for containers that state no length.</summary>
internal sealed class PacketScan(FfmpegTools tools)
{
    /// <exception cref="ClipSetAsideException">The file cannot be read.</exception>
    public async Task<(double Seconds, int Packets)> RunAsync(string path, StreamInfo stream, CancellationToken cancellationToken)
    {
        var arguments = $"-hide_banner -v error -protocol_whitelist file -format_whitelist {FormatLists.Allowed} -select_streams {stream.Index} "
            + $"-show_entries packet=pts,duration -print_format csv=p=0 -i \"{CommandText.QuotedFile(path)}\"";
        await using var process = ToolProcess.Start(tools.FfprobePath, arguments, withInput: false, cancellationToken);
        using var lines = new StreamReader(process.Output);
        var end = stream.OriginTicks;
        var packets = 0;
        while (await lines.ReadLineAsync(CancellationToken.None) is { } line)
        {
            packets++;
            var fields = line.Split(',');
            if (long.TryParse(fields[0], CultureInfo.InvariantCulture, out var pts))
                end = Math.Max(end, pts + (fields.Length > 1 && long.TryParse(fields[1], CultureInfo.InvariantCulture, out var length) ? length : 0));
        }

        await process.WaitAsync();
        cancellationToken.ThrowIfCancellationRequested();
        return (stream.ToSeconds(end - stream.OriginTicks), packets);
    }
}
