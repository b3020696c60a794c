namespace GaitSeat.Architecture.Tests;

/// <summary>Footage goes in at the top and only ever moves down: no project looks down the list.</summary>
public sealed class ArrowTests
{
    [Fact]
    public void Projects_AreThoseOfTheHouse() => Assert.Empty(House.Projects.Select(p => p.Name).Except(House.Order));

    [Fact]
    public void List_IsReadFromRealProjects() => Assert.True(House.Projects.Count >= 9, $"Only {House.Projects.Count} projects found under src.");

    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void ProjectFile_KnowsOnlyThoseAbove(string name) => Assert.Empty(House.Get(name).References.Except(Above(name)));

    /// <summary>References through other projects reach further than the project file says; the compiled assembly tells what is used.</summary>
    [Theory]
    [MemberData(nameof(House.ProjectNames), MemberType = typeof(House))]
    public void Assembly_KnowsOnlyThoseAbove(string name)
    {
        var ours = House.Projects.ToDictionary(p => p.AssemblyName, p => p.Name);
        var used = House.Get(name).Load().GetReferencedAssemblies().Select(a => a.Name!).Where(ours.ContainsKey).Select(a => ours[a]);
        Assert.Empty(used.Except(Above(name)));
    }

    /// <summary>What a stage may know is narrower than the list: stages meet in the pipeline, not in each other.</summary>
    [Theory]
    [InlineData("GaitSeat.Model")]
    [InlineData("GaitSeat.Motion", "GaitSeat.Model")]
    [InlineData("GaitSeat.Footage", "GaitSeat.Model")]
    [InlineData("GaitSeat.Vision", "GaitSeat.Model")]
    [InlineData("GaitSeat.Store", "GaitSeat.Model")]
    [InlineData("GaitSeat.Faults", "GaitSeat.Model")]
    [InlineData("GaitSeat.Study", "GaitSeat.Model")]
    [InlineData("GaitSeat.Review", "GaitSeat.Model", "GaitSeat.Footage", "GaitSeat.Store", "GaitSeat.Faults", "GaitSeat.Pipeline")]
    [InlineData("GaitSeat.Studio", "GaitSeat.Model", "GaitSeat.Motion", "GaitSeat.Footage")]
    public void Stage_KnowsOnlyWhatTheHouseGrantsIt(string name, params string[] granted) =>
        Assert.Empty(House.Get(name).References.Except(granted));

    private static IEnumerable<string> Above(string name) => House.Order.TakeWhile(n => n != name);
}
