using CsCheck;

namespace GaitSeat.Footage.Tests;

public sealed class NutNumbersTests
{
    private const string Seed = "0000KOIPe036";

    [Fact]
    public void Numbers_ReadBackAsWritten() =>
        Gen.Long[0, long.MaxValue / 4].Select(Gen.Long[long.MinValue / 4, long.MaxValue / 4]).Sample((unsigned, signed) =>
        {
            var bytes = new NutBytes(new MemoryStream(new NutBlock().Unsigned(unsigned).Signed(signed).Written.ToArray()));
            var (u, s) = (bytes.UnsignedAsync().AsTask().Result, bytes.SignedAsync().AsTask().Result);
            return u == unsigned && s == signed;
        }, seed: Seed, iter: 2_000);

    /// <summary>NUT specification: 7 bits a byte, so 128 takes two.</summary>
    [Theory]
    [InlineData(0, new byte[] { 0 })]
    [InlineData(127, new byte[] { 0x7F })]
    [InlineData(128, new byte[] { 0x81, 0 })]
    [InlineData(16_384, new byte[] { 0x81, 0x80, 0 })]
    public void Unsigned_IsSevenBitsAByte(long value, byte[] written) => Assert.Equal(written, new NutBlock().Unsigned(value).Written.ToArray());

    /// <summary>CRC-32/CKSUM of "123456789" is 765E7680 (catalogue of CRC algorithms, from memory); it differs from this one only by the final inversion.</summary>
    [Fact]
    public void Checksum_OfTheUsualDigits() =>
        Assert.Equal(BitConverter.GetBytes(~0x765E7680u).Reverse(), new NutBlock().Bytes("123456789"u8).WithChecksum()[^4..]);

    [Fact]
    public void Checksum_OfBytesAndTheirChecksumIsZero() =>
        Gen.Byte.Array[0, 40].Sample(bytes => new NutBlock().Bytes(new NutBlock().Bytes(bytes).WithChecksum()).WithChecksum()[^4..].All(b => b == 0), seed: Seed, iter: 200);
}
