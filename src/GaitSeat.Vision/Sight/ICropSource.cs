using System.Runtime.Intrinsics;

namespace GaitSeat.Vision.Sight;

/// <summary>A picture that crops are taken from. Lane 3 of its vectors means nothing.</summary>
internal interface ICropSource
{
    /// <summary>The picture between its pixels, in three channels of its own that may be averaged.</summary>
    /// <param name="x">From the middle of the left-most pixel rightwards, 32.32 fixed point, px.</param>
    /// <param name="y">From the middle of the top-most pixel downwards, 32.32 fixed point, px.</param>
    Vector128<float> At(long x, long y);

    /// <summary>Red, green and blue, 0..255, of a mean of those channels.</summary>
    Vector128<float> ToRgb(Vector128<float> mean);
}
