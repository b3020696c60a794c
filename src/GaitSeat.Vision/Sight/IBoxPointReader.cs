using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Reads a person's 17 COCO points from the picture around a box. One caller at a time.</summary>
internal interface IBoxPointReader : IDisposable
{
    RawPoints Read(Frame frame, BoxPx rider);
}
