using GaitSeat.Footage;
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
    private readonly ForgottenList _forgotten = ForgottenList.Read(dataset.Folder);

    /// <summary>Whether the clip's rows are there under the same settings, models and row of the sheet.</summary>
    public bool IsDone(string clipKey, Session? session) => dataset.IsDone(clipKey, stage.PipelineHash, stage.ModelHash, session, tracks);

    /// <param name="clip">The clip. Nothing is written under its key if the file is another by the end.</param>
    /// <param name="session">Its row of the sheet; null where there is none.</param>
    /// <param name="progress">Told the number of frames followed so far.</param>
    /// <param name="ct">Stops between frames; nothing is left behind.</param>
    /// <exception cref="DatasetException">The dataset cannot be written to.</exception>
    /// <exception cref="IOException">The clip could not be read to its end, or was replaced meanwhile, or a tool was ended from outside.</exception>
    public async Task<ClipOutcome> DoAsync(KeyedClip clip, Session? session, IProgress<int>? progress, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(clip);
        if (session?.Against(ConsentUse.Measure) is { } gap) return Erase(clip, gap);
        if (_forgotten.HasClip(clip.Key)) return Erase(clip, new("forgotten", "the clip was erased on purpose"));
        if (IsDone(clip.Key, session)) return ClipOutcome.Without(clip.File, ClipEnd.AlreadyDone, null, null);
        // A pipe or device has no length either, and reading it may never end.
        if (clip.Bytes == 0) return await SetAsideAsync(clip.File, clip.Key, session, ClipReasons.FileEmpty, $"'{clip.Path}' has no bytes; copy it again from the camera.", ct);
        try
        {
            var measured = await stage.MeasureAsync(clip.Path, session?.Lengths ?? BodyLengths.Unknown, progress, ct);
            if (measured.LeftOut.Any(l => l.Reason is ClipReasons.Truncated or ClipReasons.Damaged)) await clip.ThrowIfUnreadableAsync(ct);
            var pictures = await DrawAsync(measured, clip, ct);
            await dataset.WriteAsync(new(Source(clip.Key, clip.File), session, measured.Info, ClipStatus.Measured, null, null, measured.Sightings, measured.Motion, measured.Findings, measured.LeftOut, measured.Sightings.Count), tracks, ct);
            return new(clip.File, ClipEnd.Measured, null, null, measured.Sightings.Count, measured.Motion.Spells, measured.Motion.Strides, measured.Findings, measured.LeftOut, pictures);
        }
        catch (ClipSetAsideException e)
        {
            await clip.ThrowIfUnreadableAsync(ct);
            return await SetAsideAsync(clip.File, clip.Key, session, e.Reason, e.Message, ct);
        }
    }

    /// <summary>Records that a clip cannot be measured, and why; it is not tried again unless the file changes.</summary>
    public async Task<ClipOutcome> SetAsideAsync(string file, string clipKey, Session? session, string reason, string detail, CancellationToken ct)
    {
        await dataset.WriteAsync(new(Source(clipKey, file), session, null, ClipStatus.SetAside, reason, detail, null, null, [], [], 0), tracks, ct);
        return ClipOutcome.Without(file, ClipEnd.SetAside, reason, detail);
    }

    /// <summary>The pictures read the clip once more, so the file is looked at before and after.</summary>
    private async Task<IReadOnlyList<string>> DrawAsync(ClipMeasurement measured, KeyedClip clip, CancellationToken ct)
    {
        clip.ThrowIfChanged();
        var pictures = await stage.DrawAsync(measured, clip.Key, PictureFolder, ct);
        try
        {
            clip.ThrowIfChanged();
            return pictures;
        }
        catch (ClipChangedException)
        {
            foreach (var picture in pictures) File.Delete(picture);
            throw;
        }
    }

    /// <summary>Consent that was taken back, has ended or does not go that far: rows and pictures of earlier runs go.</summary>
    private ClipOutcome Erase(KeyedClip clip, ConsentGap gap)
    {
        dataset.Erase(clip.Key);
        if (Directory.Exists(PictureFolder))
        {
            // Earlier versions began the names of pictures with that of the clip.
            foreach (var pattern in new[] { $"{ClipKey.InName(clip.Key)}-*", $"*-{clip.Key[..8]}-*" })
                foreach (var picture in Directory.EnumerateFiles(PictureFolder, pattern)) File.Delete(picture);
        }

        return ClipOutcome.Without(clip.File, ClipEnd.NoConsent, gap.Reason, $"{clip.File}: {gap.Sentence}; not processed, and nothing of it is kept");
    }

    private Provenance Source(string clipKey, string file) => new(clipKey, file, stage.PipelineHash, stage.ModelHash, softwareVersion, Provenance.CurrentSchemaVersion);

    private string PictureFolder => SeasonRun.PictureFolder(dataset.Folder);
}
