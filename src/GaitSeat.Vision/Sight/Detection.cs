using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

public enum DetectedKind
{
    Person,
    Horse,
}

/// <summary>A person or horse the detector saw.</summary>
/// <param name="Box">Where, picture px.</param>
/// <param name="Score">0..1.</param>
public readonly record struct Detection(DetectedKind Kind, BoxPx Box, double Score);
