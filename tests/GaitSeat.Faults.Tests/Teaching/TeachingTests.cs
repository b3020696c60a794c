using GaitSeat.Faults.Teaching;
using GaitSeat.Model;

namespace GaitSeat.Faults.Tests.Teaching;

public sealed class TeachingTests : IDisposable
{
    private static readonly string Datasets = Path.Combine(Repository.Root, "datasets");
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-teaching-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void ShippedOrder_HasLengthBeforeLegSeatBeforeHandsAndFeetLast()
    {
        var order = Order(File.ReadAllText(Path.Combine(Datasets, "teaching-order.json")));
        var sorted = order.Sort([Fault.ForcedHeel, Fault.BusyHands, Fault.SwingingLowerLeg, Fault.BehindTheMovement, Fault.StirrupShort, Fault.ForcedHeel]);
        Assert.Equal([Fault.StirrupShort, Fault.BehindTheMovement, Fault.BusyHands, Fault.SwingingLowerLeg, Fault.ForcedHeel], sorted.Select(s => s.Fault));
    }

    [Fact]
    public void EveryFault_HasACardWithItsCautions()
    {
        var cards = ExerciseCards.Read(Path.Combine(Datasets, "exercises"));
        Assert.All(cards.Values, c =>
        {
            Assert.Contains("helmet", c.Sections["Cautions"], StringComparison.Ordinal);
            Assert.Contains("qualified instructor", c.Sections["Cautions"], StringComparison.Ordinal);
            Assert.Contains("Stop at any pain", c.Sections["Cautions"], StringComparison.Ordinal);
        });
        Assert.All([Fault.StirrupShort, Fault.StirrupLong], f => Assert.Contains("at the halt only, with a helper", cards[f].Sections["Cautions"], StringComparison.Ordinal));
    }

    [Fact]
    public void NoMoreFilesThanFaults_LieAmongTheCards() =>
        Assert.Equal(Enum.GetValues<Fault>().Select(f => f.ToTerm() + ".md").Order(), Directory.GetFiles(Path.Combine(Datasets, "exercises")).Select(Path.GetFileName).Order());

    [Theory]
    [InlineData("{", "cannot be read")]
    [InlineData("{}", "has no 'order'")]
    [InlineData("""{"order":[{"fault":"crooked","severity":0.5}]}""", "found fault 'crooked'; allowed are stirrup_short")]
    [InlineData("""{"order":[{"fault":"chair_seat","severity":0.5}]}""", "stirrup_short, stirrup_long, small_rise, fork_seat")]
    [InlineData("""{"order":[{"fault":"chair_seat","severity":0.5},{"fault":"chair_seat","severity":0.5}]}""", "chair_seat stands 2 times")]
    public void WrongOrder_SaysWhatIsAllowed(string json, string said) =>
        Assert.Contains(said, Assert.Throws<TeachingException>(() => Order(json)).Message, StringComparison.Ordinal);

    [Fact]
    public void SeverityOutOfRange_IsRefused()
    {
        var json = File.ReadAllText(Path.Combine(Datasets, "teaching-order.json")).Replace("\"severity\": 1.0", "\"severity\": 3", StringComparison.Ordinal);
        Assert.Contains("severity of heavy_landing is 3", Assert.Throws<TeachingException>(() => Order(json)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("## When to stop", "no text under '## When to stop'")]
    [InlineData("# Chair", "without a title")]
    public void CardWithoutAPart_SaysWhich(string taken, string said)
    {
        foreach (var file in Directory.GetFiles(Path.Combine(Datasets, "exercises"))) File.Copy(file, Path.Combine(_folder, Path.GetFileName(file)));
        var path = Path.Combine(_folder, "chair_seat.md");
        File.WriteAllText(path, File.ReadAllText(path).Replace(taken, "Other", StringComparison.Ordinal));
        Assert.Contains(said, Assert.Throws<TeachingException>(() => ExerciseCards.Read(_folder)).Message, StringComparison.Ordinal);
        File.Delete(path);
        Assert.Contains("is missing", Assert.Throws<TeachingException>(() => ExerciseCards.Read(_folder)).Message, StringComparison.Ordinal);
    }

    private TeachingOrder Order(string json)
    {
        var path = Path.Combine(_folder, "order.json");
        File.WriteAllText(path, json);
        return TeachingOrder.Read(path);
    }
}
