using GaitSeat.Model;
using GaitSeat.Motion;
using GaitSeat.Motion.Sessions;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>What the sessions of a dataset show as a whole, once all clips are measured: changes of stirrup length, and left against right.</summary>
internal sealed class SessionPass(SessionSettings settings, string softwareVersion)
{
    /// <summary>Reads the strides of a run back, and writes one file a session.</summary>
    /// <returns>One line for people for each change that was found.</returns>
    public async Task<IReadOnlyList<string>> RunAsync(Dataset dataset, string pipelineHash, string modelHash, CancellationToken ct)
    {
        var sessions = new List<SessionRecord>();
        var lines = new List<string>();
        foreach (var session in SessionReader.Read(dataset, pipelineHash, modelHash))
        {
            ct.ThrowIfCancellationRequested();
            var changes = ChangeFinder.InSession(session.Strides, settings);
            var sides = ReinComparison.Of(session.Strides, settings);
            sessions.Add(new(session.Key, session.ClipKeys, pipelineHash, modelHash, softwareVersion, [.. changes.SelectMany(c => FactsOf(c, session)), .. sides.Select(FactOf)]));
            lines.AddRange(changes.Select(c => LineOf(c, session)));
        }

        await dataset.WriteSessionsAsync(sessions, pipelineHash, modelHash, ct);
        return lines;
    }

    /// <summary>
    /// The same, where the strides are safe already: an old file that cannot be read must not make the whole run fail. Nothing is read where nothing changed since the last time.
    /// </summary>
    /// <returns>Lines for people; what went wrong among them.</returns>
    public static async Task<IReadOnlyList<string>> NotesAsync(SessionSettings settings, string softwareVersion, Dataset dataset, IClipStage stage, CancellationToken ct)
    {
        try
        {
            var mark = new PassMark(dataset, "sessions", ["strides"], $"{stage.PipelineHash}\n{stage.ModelHash}\n{softwareVersion}\n{Provenance.CurrentSchemaVersion}");
            return await mark.LinesAsync(() => new SessionPass(settings, softwareVersion).RunAsync(dataset, stage.PipelineHash, stage.ModelHash, ct));
        }
        catch (Exception e) when (e is DatasetException or IOException or UnauthorizedAccessException)
        {
            return [$"the sessions table was not made: {e.Message}"];
        }
    }

    private static IEnumerable<SessionFact> FactsOf(SessionShift change, RiddenSession session)
    {
        var shift = change.Shift;
        var place = new SessionChangePlace(
            shift.Direction, change.Rein, shift.Facing, session.ClipFiles[change.ClipBefore], shift.Before.EndSeconds, session.ClipFiles[change.ClipAfter], shift.After.StartSeconds, shift.ChanceProbability);
        return shift.Effects.Select(e => new SessionFact(
            SessionFactKind.StirrupChange, e.Measure, e.Before, e.After, e.Difference, 0, shift.StridesBefore, shift.StridesAfter, change.ClipsBefore, change.ClipsAfter) { Change = place });
    }

    private static SessionFact FactOf(LeftRightDifference d) => new(
        d.Basis == LeftRightBasis.Rein ? SessionFactKind.ReinDifference : SessionFactKind.SideDifference,
        d.Measure,
        d.Left,
        d.Right,
        d.Difference,
        d.SideBiasStandardError,
        d.StridesLeft,
        d.StridesRight,
        d.ClipsLeft,
        d.ClipsRight);

    private static string LineOf(SessionShift change, RiddenSession session)
    {
        var thigh = change.Shift.Effects.Single(e => e.Measure == StrideMeasure.ThighAngleSit).Difference;
        string before = session.ClipFiles[change.ClipBefore], after = session.ClipFiles[change.ClipAfter];
        var where = change.ClipBefore == change.ClipAfter
            ? $"in {before} between {change.Shift.Before.EndSeconds:F0} and {change.Shift.After.StartSeconds:F0} s"
            : $"between {before} and {after}";
        return FormattableString.Invariant(
            $"{session.Key.Rider} on {session.Key.Horse}, {session.Key.Date:yyyy-MM-dd}: stirrups seem {change.Shift.Direction.ToTerm()} {where} (thigh at the sit {thigh.Value:+0.0;-0.0} deg, 95 % interval {thigh.Value - thigh.HalfWidth95:F1} to {thigh.Value + thigh.HalfWidth95:F1}; by chance {change.Shift.ChanceProbability:P1})");
    }
}
