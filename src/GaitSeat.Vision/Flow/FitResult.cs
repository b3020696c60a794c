namespace GaitSeat.Vision.Flow;

/// <summary>A fitted motion, level-0 px.</summary>
/// <param name="Points">Windows that agree with it.</param>
/// <param name="ResidualPx">Their median distance from it.</param>
/// <param name="ErrorPx">Standard error of the shift along its worse direction.</param>
internal readonly record struct FitResult(MotionField Field, int Points, double ResidualPx, double ErrorPx);
