using System.Globalization;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Track Row Column, text parted by tabs, as the OpenSim documentation describes it ("Marker (.trc) Files"); a position that is not known is left empty.</summary>
internal static class TrcFile
{
    private static readonly BodyPoint[] Points = Enum.GetValues<BodyPoint>();

    internal static string Text(PlaneMotion motion, string fileName)
    {
        var text = new StringBuilder();
        var rate = motion.RateHz.ToString("0.######", CultureInfo.InvariantCulture);
        text.Append(CultureInfo.InvariantCulture, $"PathFileType\t4\t(X/Y/Z)\t{fileName}\n");
        text.Append("DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\tOrigDataStartFrame\tOrigNumFrames\n");
        text.Append(CultureInfo.InvariantCulture, $"{rate}\t{rate}\t{motion.Frames.Count}\t{Points.Length}\tmm\t{rate}\t1\t{motion.Frames.Count}\n");
        text.Append("Frame#\tTime").AppendJoin("", Points.Select(p => $"\t{MarkerNames.Of(p, motion.Facing)}\t\t")).Append('\n');
        text.Append('\t').AppendJoin("", Points.Select((_, i) => FormattableString.Invariant($"\tX{i + 1}\tY{i + 1}\tZ{i + 1}"))).Append("\n\n");
        for (var k = 0; k < motion.Frames.Count; k++)
        {
            var frame = motion.Frames[k];
            text.Append(CultureInfo.InvariantCulture, $"{k + 1}\t{frame.Seconds:0.000000}");
            foreach (var p in Points) text.Append('\t').Append(Position(frame.ForwardMm[(int)p], frame.UpMm[(int)p]));
            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Position(double forward, double up) => double.IsFinite(forward) && double.IsFinite(up)
        ? string.Create(CultureInfo.InvariantCulture, $"{forward:0.000}\t{up:0.000}\t0")
        : "\t\t";
}
