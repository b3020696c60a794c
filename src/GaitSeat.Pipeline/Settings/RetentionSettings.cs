using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Pipeline.Settings;

/// <summary>How long things are kept; asked by 'gaitseat retention', which erases nothing by itself and nothing without --yes. The source clips are not meant; logs of the worker have watch.log_days.</summary>
public sealed record RetentionSettings
{
    /// <summary>Days a session is kept: its rows, marks, verdicts and all that was made from its clips; 0 without end. How long is for the school and its riders to agree; no source.</summary>
    [Range(0, 36_500)]
    public int SessionDays { get; init; }

    /// <summary>Days overlays, stills and plots of a session are kept, 0 as long as its rows. They can be made again while the clip is there.</summary>
    [Range(0, 36_500)]
    public int PictureDays { get; init; }

    /// <summary>Days after which the copies that the review page made for browsers go, 0 never. They are made again when asked for.</summary>
    [Range(0, 36_500)]
    public int ReviewCopyDays { get; init; } = 30;
}
