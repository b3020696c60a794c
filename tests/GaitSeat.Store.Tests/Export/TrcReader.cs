using System.Globalization;

namespace GaitSeat.Store.Tests.Export;

/// <summary>A reader of TRC written for the tests from the OpenSim documentation ("Marker (.trc) Files": three lines of header, two of labels, one blank, then rows), apart from the writer.</summary>
internal sealed class TrcReader
{
    internal IReadOnlyDictionary<string, string> Header { get; }

    internal IReadOnlyList<string> Markers { get; }

    internal IReadOnlyList<double> Seconds { get; }

    /// <summary>By row, then by marker; null where the fields are empty.</summary>
    internal IReadOnlyList<(double X, double Y, double Z)?[]> Rows { get; }

    internal TrcReader(string text)
    {
        var lines = text.Split('\n');
        if (!lines[0].StartsWith("PathFileType\t4\t(X/Y/Z)\t", StringComparison.Ordinal)) throw new InvalidDataException("The first line is not that of a TRC file.");
        Header = lines[1].Split('\t').Zip(lines[2].Split('\t')).ToDictionary(p => p.First, p => p.Second);
        Markers = [.. lines[3].Split('\t').Skip(2).Where(m => m.Length > 0)];
        if (lines[5].Length > 0) throw new InvalidDataException("The sixth line is not blank.");
        var rows = lines.Skip(6).Where(l => l.Length > 0).Select(l => l.Split('\t')).ToList();
        Seconds = [.. rows.Select(r => double.Parse(r[1], CultureInfo.InvariantCulture))];
        Rows = [.. rows.Select(r => Enumerable.Range(0, Markers.Count).Select(m => Position(r, 2 + 3 * m)).ToArray())];
    }

    private static (double, double, double)? Position(string[] fields, int at)
    {
        double Number(int i) => double.Parse(fields[i], CultureInfo.InvariantCulture);
        return fields[at].Length == 0 ? null : (Number(at), Number(at + 1), Number(at + 2));
    }
}
