using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace GaitSeat.Faults.Training;

/// <summary>A shuffled order of riders that depends on the seed and the pseudonym alone, so that a new rider does not reshuffle the old.</summary>
internal static class RiderOrder
{
    internal static ulong Of(string rider, int seed, string purpose) =>
        BinaryPrimitives.ReadUInt64LittleEndian(SHA256.HashData(Encoding.UTF8.GetBytes($"{purpose}\n{seed}\n{rider}")));
}
