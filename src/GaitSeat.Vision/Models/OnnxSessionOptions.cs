using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Models;

/// <summary>How a model is run.</summary>
public sealed record OnnxSessionOptions
{
    /// <summary>
    /// Execution provider. Only <c>cpu</c> is built in: the packages of the others are not part of this program.
    /// </summary>
    public string ExecutionProvider { get; init; } = "cpu";

    /// <summary>
    /// Threads inside one operator. Default 1: two sessions of one thread beat one of two threads (about 20 against 24..34 ms a picture
    /// for MoveNet Thunder on 2 cores, our own measurement).
    /// </summary>
    [Range(1, 256)]
    public int Threads { get; init; } = 1;
}
