using System.Globalization;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Akka.Event;
using Akka.Remote.Transport.DotNetty;

namespace Warmup.ManyMachines;

/// <summary>What a node shows others, and the authority whose nodes it believes: its own.</summary>
internal sealed class NodeCertificate
{
    /// <summary>The authority's certificate, which lies beside those of its nodes.</summary>
    public const string AuthorityFile = "authority.pem";

    private const string AuthorityKeyFile = "authority.key";
    private const string NodeFile = ".pem";
    private const int LongestFile = 65_536;
    private const int LongestName = 40;

    // How long certificates hold: the sample's own setting.
    private static readonly TimeSpan Life = TimeSpan.FromDays(365);

    private readonly X509Certificate2 _own;
    private readonly X509Certificate2 _authority;

    private NodeCertificate(X509Certificate2 own, X509Certificate2 authority) => (_own, _authority) = (own, authority);

    /// <summary>How the engine is to encrypt: both sides of every connection show a certificate, and each checks the other's.</summary>
    public DotNettySslSetup Setup => new(_own, suppressValidation: false, requireMutualAuthentication: true, IsOfOurAuthority);

    /// <summary>Reads a node's certificate with its key, and the authority's beside it.</summary>
    /// <exception cref="UsageException">One of them is missing, cannot be read, or is not of that authority.</exception>
    public static NodeCertificate Read(string path)
    {
        var authority = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, AuthorityFile);
        try
        {
            if (new FileInfo(path).Length > LongestFile || new FileInfo(authority).Length > LongestFile)
            {
                throw new UsageException($"--certificate must be a file of at most {LongestFile} bytes, as \"certificates\" makes it");
            }

            var read = new NodeCertificate(X509Certificate2.CreateFromPemFile(path), X509CertificateLoader.LoadCertificateFromFile(authority));
            return read.Trusts(read._own) ? read : throw new UsageException($"{path} is not of the authority in {authority}, or has run out");
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new UsageException($"--certificate must be a node's file with {AuthorityFile} beside it, as \"certificates\" makes them: {wrong.Message}");
        }
    }

    /// <summary>Makes a certificate for each node. The folder's authority signs them; without one, a new authority is made.</summary>
    /// <remarks>The files hold keys without a password: the folder and they can be read by their owner only.</remarks>
    /// <exception cref="UsageException">A name is not plain, or its certificate is there already.</exception>
    public static void Make(string folder, IReadOnlyList<string> names)
    {
        if (names.FirstOrDefault(n => n.Length is 0 or > LongestName || !n.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') || n + NodeFile == AuthorityFile) is { } odd)
        {
            throw new UsageException($"a node's name has 1 to {LongestName} letters, digits and hyphens, not '{(odd.Length > LongestName ? odd[..LongestName] : odd)}', and is not 'authority'");
        }

        if (names.FirstOrDefault(n => File.Exists(Path.Combine(folder, n + NodeFile))) is { } there)
        {
            throw new UsageException($"{there}{NodeFile} is there already: delete it or choose another name");
        }

        CreateFolder(folder);
        using var authority = File.Exists(Path.Combine(folder, AuthorityFile)) ? ReadAuthority(folder) : MakeAuthority(folder);
        foreach (var name in names)
        {
            using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
            var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
            request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
            request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
            request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1"), new Oid("1.3.6.1.5.5.7.3.2")], false)); // server and client
            using var signed = request.Create(authority, authority.NotBefore, authority.NotAfter, RandomNumberGenerator.GetBytes(16));
            WritePrivate(Path.Combine(folder, name + NodeFile), $"{signed.ExportCertificatePem()}\n{key.ExportPkcs8PrivateKeyPem()}\n");
        }
    }

    private static X509Certificate2 MakeAuthority(string folder)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var name = string.Create(CultureInfo.InvariantCulture, $"CN=warmup cluster {Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8))}");
        var request = new CertificateRequest(name, key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        var now = DateTimeOffset.UtcNow;
        var authority = request.CreateSelfSigned(now.AddHours(-1), now + Life);
        WritePrivate(Path.Combine(folder, AuthorityKeyFile), key.ExportPkcs8PrivateKeyPem() + "\n");
        WritePrivate(Path.Combine(folder, AuthorityFile), authority.ExportCertificatePem() + "\n");
        return authority;
    }

    private static X509Certificate2 ReadAuthority(string folder)
    {
        try
        {
            return X509Certificate2.CreateFromPemFile(Path.Combine(folder, AuthorityFile), Path.Combine(folder, AuthorityKeyFile));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new UsageException($"the folder has an authority whose {AuthorityKeyFile} cannot be read: {wrong.Message}");
        }
    }

    private static void CreateFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    private static void WritePrivate(string path, string text)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using var writer = new StreamWriter(path, options);
        writer.Write(text);
    }

    private bool IsOfOurAuthority(X509Certificate2? certificate, X509Chain? chain, string remotePeer, SslPolicyErrors errors, ILoggingAdapter log) =>
        certificate is not null && Trusts(certificate);

    // There is no list of revoked certificates: to shut out a node, make a new authority.
    private bool Trusts(X509Certificate2 certificate)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(_authority);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.DisableCertificateDownloads = true;
        return chain.Build(certificate);
    }
}
