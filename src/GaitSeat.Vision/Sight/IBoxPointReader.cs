using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Reads a person's 17 COCO points from the picture around a box, as it is or in a mirror (then what the model took for left stands under left, though it is the right). One caller at a time.</summary>
internal interface IBoxPointReader : IDisposable
{
    RawPoints Read(Frame frame, BoxPx rider, bool mirrored);
}
