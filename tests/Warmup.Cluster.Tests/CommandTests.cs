namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the exit codes that the program states.</summary>
public class CommandTests
{
    [Theory]
    [InlineData(0, "count", "--size", "3")]
    [InlineData(0, "alone", "--size", "2", "--words", "ladder .ends", "--scales", "Mohanam")]
    [InlineData(0, "sample", "--size", "12", "--range", "1000000", "--samples", "3")]
    [InlineData(2, "sample", "--samples", "0")]
    [InlineData(2, "count", "--size", "13")]
    [InlineData(2, "alone", "--words", "ladder .nothing")]
    [InlineData(2, "alone", "--range", "0")]
    [InlineData(2, "local", "--workers", "0")]
    [InlineData(2, "coordinator", "--port", "65536")]
    [InlineData(2, "coordinator", "--host", "a b")]
    [InlineData(2, "worker", "--join", "somewhere")]
    [InlineData(2, "worker")]
    [InlineData(2, "nothing")]
    public void Exit_codes_tell_what_became_of_it(int expected, params string[] args) => Assert.Equal(expected, Program.Main(args));
}
