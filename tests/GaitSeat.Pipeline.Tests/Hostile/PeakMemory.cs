using System.Runtime.InteropServices;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>The most memory that any process started from here, or by such a one, ever held at a time. Those still running are not in it.</summary>
internal static partial class PeakMemory
{
    private const int OfChildren = -1;
    private const int LongsInRusage = 18;

    /// <summary>Two times of two longs each stand before it (getrusage(2)).</summary>
    private const int PlaceOfMaxResident = 4;

    public static long OfChildrenMegabytes()
    {
        const long KilobytesPerMegabyte = 1000;
        var usage = new long[LongsInRusage];
        Assert.Equal(0, GetRusage(OfChildren, usage));
        return usage[PlaceOfMaxResident] / KilobytesPerMegabyte;
    }

    [LibraryImport("libc", EntryPoint = "getrusage")]
    private static partial int GetRusage(int who, [Out] long[] usage);
}
