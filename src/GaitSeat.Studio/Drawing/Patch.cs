namespace GaitSeat.Studio;

/// <summary>A part of the picture, px.</summary>
internal readonly record struct Patch(int X, int Y, int Width, int Height);
