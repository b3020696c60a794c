using System.Globalization;
using System.Text;
using GaitSeat.Model;
using MathNet.Numerics.Statistics;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>What was read against the marks, in one page of Markdown. Read by the pipeline, or true where truth was given in its place.</summary>
public sealed class MarksReport
{
    private readonly IReadOnlyList<PictureReading> _readings;
    private readonly IReadOnlyList<PointError> _errors;
    private readonly MarkerRepeat _repeat;
    private readonly StringBuilder _text = new();

    /// <param name="readings">One for each picture.</param>
    /// <param name="repeat">The pictures marked twice.</param>
    public MarksReport(IReadOnlyList<PictureReading> readings, MarkerRepeat repeat)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(repeat);
        (_readings, _repeat, _errors) = (readings, repeat, PointErrors.Of(readings));
    }

    public string ToMarkdown()
    {
        _text.Clear();
        WriteCounts();
        WriteMarker();
        WriteSizes();
        WriteOffsets("Systematic offset, side-on pictures", e => e.Picture.View == MarkedView.Side);
        WriteInLegs();
        WriteOffsets("Systematic offset, side-on pictures, only points seen clearly", e => e.Picture.View == MarkedView.Side && e.Mark.Visibility == MarkVisibility.Clear);
        WriteOffsets("Systematic offset, oblique and frontal pictures", e => e.Picture.View != MarkedView.Side);
        WriteHip();
        WriteAngles("Angles, side-on pictures", r => r.Picture.View == MarkedView.Side);
        WriteAngles("Angles, all pictures", _ => true);
        WriteRatios();
        return _text.ToString();
    }

    private void WriteCounts()
    {
        var compared = _readings.Count(r => r.LeftOutReason is null);
        Line($"{_readings.Count} pictures marked ({_readings.Count(r => r.Picture.IsStill)} stills, {_readings.Count(r => !r.Picture.IsStill)} frames of {_readings.Where(r => !r.Picture.IsStill).Select(r => r.Picture.Picture).Distinct().Count()} clips), {compared} compared.");
        Line($"");
        Line($"| left out | pictures |");
        Line($"|---|---|");
        foreach (var group in _readings.Where(r => r.LeftOutReason is not null).GroupBy(r => r.LeftOutReason, StringComparer.Ordinal))
            Line($"| {group.Key} | {string.Join(", ", group.Select(r => NameOf(r.Picture)))} |");
    }

    private void WriteMarker()
    {
        Heading($"The marker's repeatability ({_repeat.Pictures} pictures marked twice)");
        Line($"| point | n | SEM forward % | SEM up % | median distance % | largest % | second less first: forward, up % |");
        Line($"|---|---|---|---|---|---|---|");
        foreach (var point in MarkedPicture.Points)
        {
            var offsets = _repeat.Of(point);
            if (offsets.Count == 0) continue;
            double[] forward = [.. offsets.Select(o => o.ForwardPct)], up = [.. offsets.Select(o => o.UpPct)], length = [.. offsets.Select(o => o.LengthPct)];
            Line($"| {point.ToTerm()} | {offsets.Count} | {MarkerRepeat.Sem(forward):0.0} | {MarkerRepeat.Sem(up):0.0} | {length.Median():0.0} | {length.Max():0.0} | {forward.Average():+0.0;-0.0;0.0}, {up.Average():+0.0;-0.0;0.0} |");
        }

        Line($"");
        Line($"| angle | n | SEM deg | mean second less first deg |");
        Line($"|---|---|---|---|");
        foreach (var angle in LimbAngle.All)
            if (_repeat.Of(angle) is { Count: > 0 } differences)
                Line($"| {angle.Name} | {differences.Count} | {MarkerRepeat.Sem(differences):0.0} | {differences.Average():+0.0;-0.0;0.0} |");
    }

    private void WriteSizes()
    {
        Heading("Distance from mark to reading, percent of rider height: median / 90th percentile (n)");
        (string Name, Func<PointError, bool> Belongs)[] groups =
        [
            ("all", _ => true),
            ("side", e => e.Picture.View == MarkedView.Side),
            ("oblique", e => e.Picture.View == MarkedView.Oblique),
            ("front", e => e.Picture.View == MarkedView.Front),
            ("stills", e => e.Picture.IsStill),
            .. _errors.Where(e => !e.Picture.IsStill).Select(e => e.Picture.Picture).Distinct().Select(c => (c, (Func<PointError, bool>)(e => e.Picture.Picture == c))),
        ];
        Line($"| point | {string.Join(" | ", groups.Select(g => g.Name))} |");
        Line($"|---|{string.Concat(groups.Select(_ => "---|"))}");
        foreach (var point in MarkedPicture.Points)
            Line($"| {point.ToTerm()} | {string.Join(" | ", groups.Select(g => Sizes(point, g.Belongs)))} |");
    }

    private string Sizes(BodyPoint point, Func<PointError, bool> belongs)
    {
        var sizes = _errors.Where(e => e.Point == point && belongs(e)).Select(e => e.Offset.LengthPct).ToArray();
        return sizes.Length == 0 ? "" : Plain($"{sizes.Median():0.0} / {sizes.Quantile(0.9):0.0} ({sizes.Length})");
    }

    private void WriteOffsets(string title, Func<PointError, bool> belongs)
    {
        Heading(title + ": read less mark, percent of rider height, each rider counted once");
        Line($"| point | riders | pictures | forward: mean ± SE | spread between riders | up: mean ± SE | spread between riders |");
        Line($"|---|---|---|---|---|---|---|");
        foreach (var point in MarkedPicture.Points)
        {
            var errors = _errors.Where(e => e.Point == point && belongs(e)).ToList();
            if (errors.Count == 0) continue;
            Systematic forward = Systematic.Of(errors.Select(e => (e.Picture.Picture, e.Offset.ForwardPct))), up = Systematic.Of(errors.Select(e => (e.Picture.Picture, e.Offset.UpPct)));
            Line($"| {point.ToTerm()} | {forward.Riders} | {errors.Count} | {Signed(forward)} | {forward.Sd:0.0} | {Signed(up)} | {up.Sd:0.0} |");
        }
    }

    private void WriteInLegs()
    {
        Heading("The same in percent of leg length, side-on pictures: mean and spread between riders, the marker's own error taken out of the spread");
        Line($"| point | riders | forward: mean | spread | up: mean | spread |");
        Line($"|---|---|---|---|---|---|");
        foreach (var point in MarkedPicture.Points)
        {
            var errors = _errors.Where(e => e.Point == point && e.Picture is { View: MarkedView.Side, LegPx: not null }).ToList();
            if (errors.Count == 0) continue;
            var repeats = _repeat.Of(point);
            var perLeg = errors.Average(e => e.Picture.RiderSpanPx!.Value / e.Picture.LegPx!.Value);
            Line($"| {point.ToTerm()} | {errors.Select(e => e.Picture.Picture).Distinct().Count()} | {InLegs(o => o.ForwardPct)} | {InLegs(o => o.UpPct)} |");

            string InLegs(Func<Offset, double> axis)
            {
                var all = Systematic.Of(errors.Select(e => (e.Picture.Picture, axis(e.Offset) * e.Picture.RiderSpanPx!.Value / e.Picture.LegPx!.Value)));
                var marker = repeats.Count == 0 ? 0 : perLeg * MarkerRepeat.Sem([.. repeats.Select(axis)]);
                return Plain($"{all.Mean:+0.0;-0.0;0.0} | {Math.Sqrt(Math.Max(0, all.Sd * all.Sd - marker * marker)):0.0}");
            }
        }
    }

    private void WriteHip()
    {
        Heading("The hip's offset along and across the marked trunk, side-on pictures, percent of rider height, each rider once");
        Line($"| riders who | riders | towards the shoulder: mean ± SE | spread | forward of the trunk: mean ± SE | spread |");
        Line($"|---|---|---|---|---|---|");
        var hips = _errors.Where(e => e.Point == BodyPoint.Hip && e.Picture.View == MarkedView.Side).Select(e => (e.Picture, Hip: HipInTrunk.Of(e))).Where(e => e.Hip is not null).ToList();
        WriteRow("all", _ => true);
        WriteRow("sit upright", h => h.LeanDeg < HipInTrunk.LeaningFromDeg);
        WriteRow($"lean {HipInTrunk.LeaningFromDeg:0} deg and more", h => h.LeanDeg >= HipInTrunk.LeaningFromDeg);
        WriteRow("face left", _ => true, Facing.Left);
        WriteRow("face right", _ => true, Facing.Right);

        void WriteRow(string who, Func<HipInTrunk, bool> belongs, Facing? facing = null)
        {
            var group = hips.Where(h => belongs(h.Hip!.Value) && (facing ?? h.Picture.Facing) == h.Picture.Facing).ToList();
            if (group.Count == 0) return;
            Systematic along = Systematic.Of(group.Select(h => (h.Picture.Picture, h.Hip!.Value.AlongPct))), across = Systematic.Of(group.Select(h => (h.Picture.Picture, h.Hip!.Value.AcrossPct)));
            Line($"| {who} | {along.Riders} | {Signed(along)} | {along.Sd:0.0} | {Signed(across)} | {across.Sd:0.0} |");
        }
    }

    private void WriteAngles(string title, Func<PictureReading, bool> belongs)
    {
        Heading(title + ": read less mark, deg");
        Line($"| angle | riders | pictures | mean ± SE (each rider once) | spread between riders | median size | 90th percentile |");
        Line($"|---|---|---|---|---|---|---|");
        foreach (var angle in LimbAngle.All)
        {
            var errors = _readings.Where(belongs).Select(r => (Rider: r.Picture.Picture, Error: angle.Error(r))).Where(e => e.Error is not null).Select(e => (e.Rider, Value: e.Error!.Value)).ToList();
            if (errors.Count == 0) continue;
            var bias = Systematic.Of(errors);
            var sizes = errors.Select(e => Math.Abs(e.Value)).ToArray();
            Line($"| {angle.Name} | {bias.Riders} | {errors.Count} | {Signed(bias)} | {bias.Sd:0.0} | {sizes.Median():0.0} | {sizes.Quantile(0.9):0.0} |");
        }
    }

    private void WriteRatios()
    {
        Heading("Segment lengths over the shank's, side-on pictures, each rider once: mean ± SE");
        Line($"| segment | riders | as marked | as read | published, bare and in the plane |");
        Line($"|---|---|---|---|---|");
        foreach (var ratio in SegmentRatio.All)
        {
            var each = _readings.Where(r => r.Picture.View == MarkedView.Side).Select(r => (Rider: r.Picture.Picture, Ratio: ratio.Of(r))).Where(r => r.Ratio is not null).ToList();
            if (each.Count == 0) continue;
            Systematic marked = Systematic.Of(each.Select(r => (r.Rider, r.Ratio!.Value.Marked))), read = Systematic.Of(each.Select(r => (r.Rider, r.Ratio!.Value.Read)));
            Line($"| {ratio.Name} | {marked.Riders} | {marked.Mean:0.00} ± {marked.StandardError:0.00} | {read.Mean:0.00} ± {read.StandardError:0.00} | {ratio.Published:0.00} |");
        }
    }

    private static string NameOf(MarkedPicture picture) => picture.TimeSeconds is { } t ? Plain($"{picture.Picture} at {t:0.000} s") : picture.Picture;

    private static string Signed(Systematic s) => Plain($"{s.Mean:+0.0;-0.0;0.0} ± {s.StandardError:0.0}");

    private static string Plain(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private void Heading(string title)
    {
        Line($"");
        Line($"## {title}");
        Line($"");
    }

    private void Line(FormattableString line) => _text.Append(Plain(line)).Append('\n');
}
