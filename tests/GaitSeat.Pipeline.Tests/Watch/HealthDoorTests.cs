using System.Net;
using System.Text;
using GaitSeat.Cli.Watching;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>Who sees the health page: this machine, or who knows the password.</summary>
public sealed class HealthDoorTests
{
    private const string Password = "a long one, with ümlaut";

    [Theory]
    [InlineData("localhost", null)]
    [InlineData("127.0.0.1", null)]
    [InlineData("elsewhere.example", HttpStatusCode.Forbidden)]
    public void WithoutAPassword_OnlyThisMachine(string host, HttpStatusCode? refused)
    {
        var door = HealthDoor.Of("127.0.0.1", null);

        Assert.Equal(refused, door.Refuses(host, null));
        Assert.Null(door.Warning);
    }

    [Fact]
    public void WithAPassword_WhoKnowsIt_UnderAnyName()
    {
        var door = HealthDoor.Of("0.0.0.0", Password);

        Assert.Null(door.Refuses("worker.example", Basic("anyone:" + Password)));
        foreach (var wrong in new[] { null, "", "Basic", "Basic !!!", "Bearer x", Basic(Password), Basic("anyone:"), Basic("anyone:" + Password + "x"), Basic("anyone:" + Password[..^1]) })
            Assert.Equal(HttpStatusCode.Unauthorized, door.Refuses("localhost", wrong));
        Assert.Contains("unencrypted", door.Warning, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.0.0.0", null, "needs a password of at least 15 characters in the variable GAITSEAT_HEALTH_PASSWORD")]
    [InlineData("192.0.2.7", "", "needs a password")]
    [InlineData("0.0.0.0", "too short", "has 9 characters; at least 15 are needed")]
    [InlineData("the internet", Password, "allowed is an IP address of this machine")]
    public void OpenWithoutAProperPassword_IsRefused(string address, string? password, string message) =>
        Assert.Contains(message, Assert.Throws<SeasonException>(() => HealthDoor.Of(address, password)).Message, StringComparison.Ordinal);

    private static string Basic(string text) => "Basic " + Convert.ToBase64String(Encoding.UTF8.GetBytes(text));
}
