namespace GaitSeat.Studio;

/// <summary>Colours of a made clip, each as <c>#rrggbb</c>.</summary>
public sealed record Look
{
    public string Coat { get; init; } = "#8a4a24";

    /// <summary>Mane, tail and lower legs.</summary>
    public string Points { get; init; } = "#1d1512";

    /// <summary>Whether the coat carries paler dapples.</summary>
    public bool Dapples { get; init; } = true;

    /// <summary>Whether near hind and far fore carry white stockings.</summary>
    public bool Stockings { get; init; } = true;

    public string SaddleCloth { get; init; } = "#f2f1ec";

    public string ClothBorder { get; init; } = "#27406e";

    public string Saddle { get; init; } = "#4a2a18";

    public string Jacket { get; init; } = "#24406b";

    /// <summary>Whether the jacket is wide and hangs over the seat.</summary>
    public bool LooseJacket { get; init; }

    /// <summary>Whether the hair hangs down the back.</summary>
    public bool LongHair { get; init; }

    public string Breeches { get; init; } = "#d9c9a6";

    public string Boots { get; init; } = "#191717";

    public string Helmet { get; init; } = "#15171c";

    public string Skin { get; init; } = "#e0ac88";

    public string Hair { get; init; } = "#4b3020";

    public string Gloves { get; init; } = "#26221f";

    public string Fence { get; init; } = "#e4e3dd";

    public string Sand { get; init; } = "#b79b74";

    /// <summary>The letter on the arena board.</summary>
    public string BoardLetter { get; init; } = "E";
}
