namespace GaitSeat.Studio;

/// <summary>An invented rider of the demo season, under a pseudonym. Has never lived.</summary>
public sealed record DemoRider
{
    public required string Name { get; init; }

    public required string Horse { get; init; }

    public required double StatureCm { get; init; }

    /// <summary>As in <see cref="ClipScript.ThighOverStature"/>; riders differ.</summary>
    public double ThighOverStature { get; init; } = new ClipScript().ThighOverStature;

    /// <summary>As in <see cref="ClipScript.ShankOverStature"/>.</summary>
    public double ShankOverStature { get; init; } = new ClipScript().ShankOverStature;

    public Look Look { get; init; } = new();

    public required IReadOnlyList<DemoSession> Sessions { get; init; }
}

/// <summary>One session of a demo rider: one clip and its row in the session sheet.</summary>
public sealed record DemoSession
{
    public required DateOnly Date { get; init; }

    /// <summary>Hole of the stirrup leather as the sheet names it; null leaves the cell empty.</summary>
    public double? StirrupHole { get; init; }

    /// <summary>No: the clip lies in the folder but must not be processed.</summary>
    public bool Consent { get; init; } = true;

    /// <summary>What the sheet says.</summary>
    public string? Note { get; init; }

    /// <summary>What was planted, for people who check the demo; never written to the sheet.</summary>
    public string? Planted { get; init; }

    /// <summary>How it is ridden and filmed. Rider, colours and seed come from the season.</summary>
    public ClipScript Clip { get; init; } = new();
}

/// <summary>A clip of the season, ready to be made.</summary>
public sealed record DemoClip(string Name, DemoRider Rider, DemoSession Session, ClipScript Script);

/// <summary>How far the making of the season is.</summary>
/// <param name="Clip">The clip that is done.</param>
/// <param name="Made">False where it was there already.</param>
public sealed record DemoProgress(int ClipsDone, int ClipsTotal, string Clip, bool Made);
