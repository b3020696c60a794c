namespace GaitSeat.Footage;

/// <summary>What may follow a frame code; the values are those of the NUT specification.</summary>
[Flags]
internal enum NutFlags
{
    None = 0,
    CodedTime = 8,
    StreamId = 16,
    SizeMsb = 32,
    Checksum = 64,
    Reserved = 128,
    SideData = 256,
    HeaderIndex = 1024,
    MatchTime = 2048,
    Coded = 4096,
    Invalid = 8192,
}

/// <summary>What one frame code stands for, so that most frame headers take a single byte.</summary>
internal readonly record struct NutFrameCode(NutFlags Flags, long TimeDelta, long SizeFactor, long SizeLow, long ReservedCount, int HeaderIndex);
