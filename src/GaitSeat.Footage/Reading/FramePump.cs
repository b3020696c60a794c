using System.Threading.Channels;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Carries frames from FFmpeg's output into a bounded channel. When the channel is full it stops reading, the pipe fills, and FFmpeg waits.</summary>
internal sealed class FramePump(int widthPx, int heightPx, ColourMatrix? colours)
{
    /// <summary>Ends when the output does. A frame cut short by a killed FFmpeg is dropped; other failures reach the channel's reader.</summary>
    public async Task RunAsync(Stream output, ChannelWriter<Frame> frames, CancellationToken cancellationToken)
    {
        try
        {
            var reader = new NutReader(output);
            for (var index = 0; await reader.NextAsync() is var (seconds, bytes); index++)
            {
                await SendAsync(reader, new Frame(index, seconds, widthPx, heightPx, colours), bytes, frames, cancellationToken);
            }

            frames.Complete();
        }
        catch (EndOfStreamException)
        {
            frames.Complete();
        }
        catch (Exception e)
        {
            frames.Complete(e);
        }
    }

    private static async Task SendAsync(NutReader reader, Frame frame, long bytes, ChannelWriter<Frame> frames, CancellationToken cancellationToken)
    {
        try
        {
            if (bytes != frame.Bytes) throw new InvalidDataException($"FFmpeg gave a frame of {bytes} bytes; {frame.Bytes} were asked for ({frame.WidthPx} x {frame.HeightPx} px).");
            await reader.ReadPixelsAsync(frame.Memory);
            await frames.WriteAsync(frame, cancellationToken);
        }
        catch
        {
            frame.Dispose();
            throw;
        }
    }
}
