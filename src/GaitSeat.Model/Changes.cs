namespace GaitSeat.Model;

/// <summary>Which way the leathers were changed.</summary>
public enum LengthChange
{
    Shorter,
    Longer,
}

/// <summary>What a measure did at a change, in the unit of its column.</summary>
/// <param name="Measure">Which measure.</param>
/// <param name="Before">Mean over the strides before, with the standard error of that mean.</param>
/// <param name="After">Mean over the strides after.</param>
/// <param name="Difference">After less before. Its standard error is smaller than those of the means would make it: what is steady in a clip falls out.</param>
public sealed record ChangeEffect(StrideMeasure Measure, Measured Before, Measured After, Measured Difference);

/// <summary>A change of stirrup length that was found in the strides, without being told of it.</summary>
/// <param name="Direction">Shorter: thigh angle up and stirrup length index down; longer: the other way.</param>
/// <param name="Facing">Side of the picture the horse moves towards: only strides seen from one side are compared.</param>
/// <param name="Before">The last stride before it.</param>
/// <param name="After">The first stride after it.</param>
/// <param name="StridesBefore">Strides compared, up to the change before.</param>
/// <param name="StridesAfter">Strides compared, up to the next change.</param>
/// <param name="ChanceProbability">How often a ride without any change would show as much, 0..1, over all places and sides searched.</param>
/// <param name="Effects">Thigh angle, stirrup length index, rise; those that could be measured on either side.</param>
public sealed record StirrupShift(
    LengthChange Direction,
    Facing Facing,
    Stride Before,
    Stride After,
    int StridesBefore,
    int StridesAfter,
    double ChanceProbability,
    IReadOnlyList<ChangeEffect> Effects);
