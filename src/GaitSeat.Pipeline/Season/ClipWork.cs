using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Season;

/// <summary>
/// One clip of a season into the dataset. The ledger is asked first, so that asking twice does nothing twice;
/// two that do the same clip at once write the same bytes.
/// </summary>
/// <param name="tracks">Whether the per-frame table is wanted.</param>
public sealed class ClipWork(IClipStage stage, Dataset dataset, bool tracks, string softwareVersion)
{
    /// <summary>Whether the clip's rows are there under the same settings, models and row of the sheet.</summary>
    public bool IsDone(string clipKey, Session? session) => dataset.IsDone(clipKey, stage.PipelineHash, stage.ModelHash, session, tracks);

    /// <param name="path">The clip.</param>
    /// <param name="clipKey">See <see cref="ClipKey.OfFileAsync"/>.</param>
    /// <param name="session">Its row of the sheet; null where there is none.</param>
    /// <param name="progress">Told the number of frames followed so far.</param>
    /// <param name="ct">Stops between frames; nothing is left behind.</param>
    /// <exception cref="DatasetException">The dataset cannot be written to.</exception>
    public async Task<ClipOutcome> DoAsync(string path, string clipKey, Session? session, IProgress<int>? progress, CancellationToken ct)
    {
        var file = Path.GetFileName(path);
        if (session is { Consent: false }) return Erase(file, clipKey);
        if (IsDone(clipKey, session)) return ClipOutcome.Without(file, ClipEnd.AlreadyDone, null, null);
        try
        {
            var measured = await stage.MeasureAsync(path, session?.Lengths ?? BodyLengths.Unknown, progress, ct);
            var pictures = await stage.DrawAsync(measured, clipKey, PictureFolder, ct);
            await dataset.WriteAsync(new(Source(clipKey, file), session, measured.Info, ClipStatus.Measured, null, null, measured.Sightings, measured.Motion, measured.Findings, measured.LeftOut, measured.Sightings.Count), tracks, ct);
            return new(file, ClipEnd.Measured, null, null, measured.Sightings.Count, measured.Motion.Spells, measured.Motion.Strides, measured.Findings, measured.LeftOut, pictures);
        }
        catch (ClipSetAsideException e)
        {
            return await SetAsideAsync(file, clipKey, session, e.Reason, e.Message, ct);
        }
    }

    /// <summary>Records that a clip cannot be measured, and why; it is not tried again unless the file changes.</summary>
    public async Task<ClipOutcome> SetAsideAsync(string file, string clipKey, Session? session, string reason, string detail, CancellationToken ct)
    {
        await dataset.WriteAsync(new(Source(clipKey, file), session, null, ClipStatus.SetAside, reason, detail, null, null, [], [], 0), tracks, ct);
        return ClipOutcome.Without(file, ClipEnd.SetAside, reason, detail);
    }

    /// <summary>Consent that was taken back: rows and pictures of earlier runs go.</summary>
    private ClipOutcome Erase(string file, string clipKey)
    {
        dataset.Erase(clipKey);
        if (Directory.Exists(PictureFolder))
        {
            foreach (var picture in Directory.EnumerateFiles(PictureFolder, $"*-{clipKey[..8]}-*")) File.Delete(picture);
        }

        return ClipOutcome.Without(file, ClipEnd.NoConsent, "no_consent", $"{file}: the sheet says no consent; not processed, and nothing of it is kept");
    }

    private Provenance Source(string clipKey, string file) => new(clipKey, file, stage.PipelineHash, stage.ModelHash, softwareVersion, Provenance.CurrentSchemaVersion);

    private string PictureFolder => SeasonRun.PictureFolder(dataset.Folder);
}
